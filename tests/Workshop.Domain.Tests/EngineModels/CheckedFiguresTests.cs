using System.Text.Json.Nodes;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.EngineModels;

public class CheckedFiguresTests
{
    private static readonly DocumentPath Fastener = Path("fasteners[sump-plug]");
    private static readonly DocumentPath Limit = Path("limits[intake/1]");

    [Fact]
    public void Whoever_compared_figures_is_named_with_the_day()
    {
        var marked = CheckedFigures.Mark(Document(), Fastener, "Mana Ger", "2026-11-26")!;

        var part = Assert.Single(CheckedFigures.In(marked), p => p.CheckedBy is not null);
        Assert.Equal(("fasteners[sump-plug]", "Mana Ger", "2026-11-26"), (part.Path.ToString(), part.CheckedBy, part.CheckedOn));
    }

    [Fact]
    public void A_check_ends_when_a_figure_changes_and_only_that_of_its_part()
    {
        var marked = CheckedFigures.Mark(CheckedFigures.Mark(Document(), Fastener, "A", "2026-01-01")!, Limit, "B", "2026-01-02")!;
        var changed = marked.DeepClone();
        changed["fasteners"]![0]!["torqueNm"] = 25;

        var carried = CheckedFigures.Carry(changed, marked);

        Assert.Null(Of(carried, Fastener).CheckedBy);
        Assert.Equal("B", Of(carried, Limit).CheckedBy);
    }

    [Fact]
    public void Another_edition_of_the_document_has_to_be_compared_anew()
    {
        var marked = CheckedFigures.Mark(Document(), Fastener, "A", "2026-01-01")!;
        var changed = marked.DeepClone();
        changed["fasteners"]![0]!["provenance"]!["edition"] = "edition 4";

        Assert.Null(Of(CheckedFigures.Carry(changed, marked), Fastener).CheckedBy);
    }

    [Fact]
    public void A_check_that_a_document_says_of_itself_counts_for_nothing()
    {
        var forged = CheckedFigures.Mark(Document(), Fastener, "Nobody", "2026-01-01")!;

        Assert.Null(Of(CheckedFigures.Carry(forged, Document()), Fastener).CheckedBy);
    }

    [Fact]
    public void A_figure_put_back_to_what_was_compared_is_checked_again()
    {
        var version = CheckedFigures.Mark(Document(), Fastener, "A", "2026-01-01")!;
        var draft = Document();
        draft["fasteners"]![0]!["torqueNm"] = 25;

        Assert.Equal("A", Of(CheckedFigures.Carry(Document(), draft, version), Fastener).CheckedBy);
    }

    [Fact]
    public void The_whole_is_unchecked_by_a_change_of_what_names_no_document_of_its_own()
    {
        var marked = CheckedFigures.Mark(Document(), DocumentPath.Whole, "A", "2026-01-01")!;
        var torque = marked.DeepClone();
        torque["fasteners"]![0]!["torqueNm"] = 25;
        var layout = marked.DeepClone();
        layout["layout"]!["timingMarks"] = "another mark";

        Assert.Equal("A", Of(CheckedFigures.Carry(torque, marked), DocumentPath.Whole).CheckedBy);
        Assert.Null(Of(CheckedFigures.Carry(layout, marked), DocumentPath.Whole).CheckedBy);
    }

    [Fact]
    public void What_names_no_document_cannot_be_marked() =>
        Assert.Null(CheckedFigures.Mark(Document(), Path("layout"), "A", "2026-01-01"));

    [Fact]
    public void A_refit_is_wanted_for_limits_and_ratios_not_for_torques_or_who_checked()
    {
        var before = SeedFile.VTwin.Specification;
        var limits = before.Limits[0];

        Assert.False(FitBasis.Differs(before, before with { Fasteners = [], Limits = [limits with { Provenance = new("x", "y", "A") }, .. before.Limits.Skip(1)] }));
        Assert.True(FitBasis.Differs(before, before with { Limits = [limits with { Upper = Clearance.FromMillimetres(limits.Upper.Millimetres + 0.01m) }, .. before.Limits.Skip(1)] }));
        Assert.False(FitBasis.ForecastsDiffer(before, before with { Fasteners = [] }));
        Assert.True(FitBasis.ForecastsDiffer(before, before with
        {
            ServiceItems = before.ServiceItems.Select(i => i.Kind == ServiceItemKind.ValveClearanceCheck
                ? i with { Interval = i.Interval! with { EveryMonths = 7 } } : i).ToList(),
        }));
        Assert.True(FitBasis.Differs(before, before with { Limits = [limits with { LeverRatio = LeverRatio.From(limits.LeverRatio.Value - 0.01m) }, .. before.Limits.Skip(1)] }));
    }

    private static JsonNode Document() => JsonNode.Parse(
        """
        {
          "layout": { "timingMarks": "a mark" },
          "limits": [{ "side": "intake", "lobe": 1, "upperMm": 0.2, "provenance": { "source": "Manual", "edition": "3" } }],
          "fasteners": [{ "code": "sump-plug", "torqueNm": 24, "provenance": { "source": "Manual", "edition": "3" } }],
          "provenance": { "source": "Manual", "edition": "3" }
        }
        """)!;

    private static CheckedPart Of(JsonNode document, DocumentPath path) => CheckedFigures.In(document).Single(p => p.Path.Equals(path));

    private static DocumentPath Path(string text) => DocumentPath.TryParse(text, out var path) ? path : throw new ArgumentException(text);
}
