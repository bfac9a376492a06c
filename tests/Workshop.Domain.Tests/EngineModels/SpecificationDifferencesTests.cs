using System.Text.Json.Nodes;
using CsCheck;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Tests.EngineModels;

public class SpecificationDifferencesTests
{
    [Fact]
    public void A_document_does_not_differ_from_itself() =>
        Assert.All(SeedFile.All, model => Assert.Empty(SpecificationDifferences.Between(Json(model), Json(model))));

    [Fact]
    public void A_figure_is_found_by_what_its_entry_is_called_not_by_where_it_stands()
    {
        var (before, after) = (Json(SeedFile.VTwin), Json(SeedFile.VTwin));
        var fasteners = after["fasteners"]!.AsArray();
        var code = fasteners[2]!["code"]!.ToString();
        fasteners[2]!["torqueNm"] = 99.5m;
        var gone = fasteners[0]!["code"]!.ToString();
        fasteners.RemoveAt(0);

        var found = SpecificationDifferences.Between(before, after);

        Assert.Equal(
            [($"fasteners[{gone}]", DifferenceKind.Removed), ($"fasteners[{code}].torqueNm", DifferenceKind.Changed)],
            found.Select(d => (d.Path.ToString(), d.Kind)));
        Assert.Equal(99.5m, found[1].After!.GetValue<decimal>());
    }

    [Fact]
    public void Another_order_of_the_same_entries_is_one_difference()
    {
        var (before, after) = (Json(SeedFile.Four), Json(SeedFile.Four));
        var positions = after["measuringPositions"]!.AsArray();
        var first = positions[0]!;
        positions.RemoveAt(0);
        positions.Add(first);

        var found = Assert.Single(SpecificationDifferences.Between(before, after));

        Assert.Equal(("measuringPositions", DifferenceKind.Reordered), (found.Path.ToString(), found.Kind));
    }

    [Fact]
    public void Entries_without_a_key_or_with_the_same_one_twice_are_one_value()
    {
        var before = JsonNode.Parse("""{"stagesNm":[5,8],"seals":[{"partCode":"a"},{"partCode":"a"}]}""")!;
        var after = JsonNode.Parse("""{"stagesNm":[5,9],"seals":[{"partCode":"a"}]}""")!;

        Assert.Equal(["stagesNm", "seals"], SpecificationDifferences.Between(before, after).Select(d => d.Path.ToString()));
    }

    [Fact]
    public void What_is_applied_makes_the_one_into_the_other() =>
        Gen.Select(Gen.Int[0, 2].Select(i => SeedFile.All[i]), Changes, Changes).Sample(
            (model, one, other) =>
            {
                var (a, b) = (Changed(Json(model), one), Changed(Json(model), other));
                var made = SpecificationDifferences.Apply(a, SpecificationDifferences.Between(a, b));
                return JsonNode.DeepEquals(b, made) && SpecificationDifferences.Between(b, made).Count == 0;
            }, iter: 150, seed: "000000000001");

    [Fact]
    public void Changes_of_two_people_that_touch_different_places_do_not_conflict_and_both_stand()
    {
        var ground = Json(SeedFile.VTwin);
        var mine = Json(SeedFile.VTwin);
        mine["fasteners"]![0]!["torqueNm"] = 31;
        var theirs = Json(SeedFile.VTwin);
        theirs["cold"]!["soakHours"] = 9;
        theirs["fasteners"]![0]!["tool"] = "another tool";
        var changes = SpecificationDifferences.Between(ground, mine);

        Assert.Empty(SpecificationDifferences.Conflicts(changes, SpecificationDifferences.Between(ground, theirs)));
        var merged = SpecificationDifferences.Apply(theirs, changes);
        Assert.Equal("31", merged["fasteners"]![0]!["torqueNm"]!.ToString());
        Assert.Equal("another tool", merged["fasteners"]![0]!["tool"]!.ToString());
        Assert.Equal("9", merged["cold"]!["soakHours"]!.ToString());
    }

    [Theory]
    [InlineData(31, 32, true)]
    [InlineData(31, 31, false)]
    public void The_same_place_conflicts_unless_both_say_the_same(int my, int their, bool conflicts)
    {
        var (ground, mine, theirs) = (Json(SeedFile.VTwin), Json(SeedFile.VTwin), Json(SeedFile.VTwin));
        mine["fasteners"]![0]!["torqueNm"] = my;
        theirs["fasteners"]![0]!["torqueNm"] = their;

        Assert.Equal(conflicts, SpecificationDifferences.Conflicts(
            SpecificationDifferences.Between(ground, mine), SpecificationDifferences.Between(ground, theirs)).Count == 1);
    }

    [Fact]
    public void What_one_takes_out_conflicts_with_what_the_other_changes_within()
    {
        var (ground, mine, theirs) = (Json(SeedFile.VTwin), Json(SeedFile.VTwin), Json(SeedFile.VTwin));
        mine["fasteners"]!.AsArray().RemoveAt(0);
        theirs["fasteners"]![0]!["torqueNm"] = 32;

        Assert.Single(SpecificationDifferences.Conflicts(
            SpecificationDifferences.Between(ground, mine), SpecificationDifferences.Between(ground, theirs)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("fasteners[drain-plug].torqueNm")]
    [InlineData("limits[intake/2]")]
    [InlineData("measuringPositions[Compression dead centre of cylinder 1.].lobes[1-intake-1/2]")]
    public void A_path_is_read_as_it_is_written(string path)
    {
        Assert.True(DocumentPath.TryParse(path, out var read));
        Assert.Equal(path, read.ToString());
    }

    [Theory]
    [InlineData("fasteners[drain-plug")]
    [InlineData("fasteners..torqueNm")]
    [InlineData("fasteners[]")]
    public void What_is_no_path_is_refused(string path) => Assert.False(DocumentPath.TryParse(path, out _));

    /// <summary>Places to change, by chance: entries taken out, added, moved; figures and words changed.</summary>
    private static Gen<(int Kind, int Place)[]> Changes => Gen.Select(Gen.Int[0, 5], Gen.Int[0, 1000]).Array[0, 6];

    internal static JsonNode Json(SeedEngineModel model) => JsonNode.Parse(SeedFile.Write(model.Specification))!;

    private static JsonNode Changed(JsonNode document, (int Kind, int Place)[] changes)
    {
        var lists = new[] { "fasteners", "joints", "serviceItems", "limits", "measuringPositions", "valves" };

        // One writer writes all members: what is absent stands there as null.
        foreach (var any in lists.SelectMany(name => document[name]!.AsArray()))
        {
            any!["remark"] = null;
        }

        foreach (var (kind, place) in changes)
        {
            var list = document[lists[place % lists.Length]]!.AsArray();
            if (list.Count == 0)
            {
                continue;
            }

            var entry = list[place % list.Count]!;
            switch (kind)
            {
                case 0:
                    list.Remove(entry);
                    break;
                case 1:
                    list.Remove(entry);
                    list.Add(entry);
                    break;
                case 2 when entry["code"] is not null:
                    var added = entry.DeepClone();
                    added["code"] = $"added-{place}";
                    if (list.All(e => e!["code"]!.ToString() != $"added-{place}"))
                    {
                        list.Insert(place % (list.Count + 1), added);
                    }

                    break;
                case 3:
                    document["cold"]!["soakHours"] = place;
                    break;
                case 4:
                    document["afterWork"] = document["afterWork"] is null ? new JsonObject { ["warmRunMinutes"] = place, ["testRideMinutes"] = null, ["recheck"] = null } : null;
                    break;
                default:
                    entry["remark"] = new JsonArray(place, "a word");
                    break;
            }
        }

        return document;
    }
}
