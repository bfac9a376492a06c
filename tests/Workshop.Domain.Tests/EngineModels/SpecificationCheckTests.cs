using System.Text.Json.Nodes;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Tests.EngineModels;

/// <summary>Each fault is planted in a specification that has none, at the place where the check must find it.</summary>
public class SpecificationCheckTests
{
    [Fact]
    public void The_invented_engine_models_are_without_fault() => Assert.All(SeedFile.All, model =>
    {
        var findings = SpecificationCheck.Of(model.Specification);
        Assert.Equal("", string.Join("\n", findings.Faults.Select(f => f.Sentence)));
        Assert.Empty(findings.ToConfirm);
    });

    [Fact]
    public void A_specification_survives_being_written_and_read() => Assert.All(SeedFile.All, model =>
    {
        var written = SeedFile.Write(model.Specification);
        Assert.Equal(written, SeedFile.Write(SeedFile.Parse(written)));
        Assert.Empty(SpecificationCheck.Of(SeedFile.Parse(written)).Faults);
    });

    public static TheoryData<string, string, string, string> PlantedFaults() => new()
    {
        // Where, what stands there instead, at which path it is found, and what the sentence says.
        { "layout/firingOrder", "[1, 1]", "layout.firingOrder", "names each of the 2 cylinders once" },
        { "layout/firingOrder", "[2, 1]", "layout.firingOrder", "begins with cylinder 1" },
        { "layout/cylinders/1/number", "3", "layout.cylinders[1].number", "2 is expected" },
        { "layout/cylinders/1/bank", "\"\"", "layout.cylinders[1].bank", "is empty" },
        { "layout/timingMarks", "\" \"", "layout.timingMarks", "is empty" },
        { "valves/0/valve", "\"3-intake-1\"", "valves[0].valve", "no cylinder 3" },
        { "valves/1/valve", "\"1-intake-1\"", "valves[1].valve", "second time" },
        { "valves/1/valve", "\"1-intake-3\"", "valves[1].valve", "positions count from 1" },
        { "valves/0/lobes", "3", "valves[0].lobes", "2 where the profile is switched" },
        { "valves/2/lobes", "2", "limits", "none for lobe 2 of the exhaust side" },
        { "camshafts/0/valves", "[\"1-intake-1\"]", "camshafts", "none for valve 1-intake-2" },
        { "camshafts/0/valves/0", "\"1-intake-4\"", "camshafts[0].valves[0]", "no such valve" },
        { "camshafts/1/code", "\"front-intake-camshaft\"", "camshafts[1].code", "each code once" },
        { "measuringPositions/1/crankDegrees", "0", "measuringPositions[1].crankDegrees", "running direction" },
        { "measuringPositions/1/crankDegrees", "720", "measuringPositions[1].crankDegrees", "0 to below 720" },
        { "measuringPositions/0/lobes/0/valve", "\"1-intake-2\"", "measuringPositions[0].lobes[2]", "measured already" },
        { "measuringPositions/0/lobes/0/valve", "\"1-intake-2\"", "measuringPositions", "none for 1-intake-1" },
        { "measuringPositions/0/lobes/4/lobe", "2", "measuringPositions[0].lobes[4]", "no such lobe" },
        { "measuringPositions/0/mark", "\"\"", "measuringPositions[0].mark", "is empty" },
        { "limits/0/upperMm", "0.12", "limits[0].upperMm", "greater than lowerMm, which is 0.12 mm" },
        { "limits/0/setToMm", "0.21", "limits[0].setToMm", "within the limits, 0.12 mm to 0.20 mm" },
        { "limits/1/lobe", "1", "limits[1].lobe", "second time" },
        { "limits/2/lobe", "2", "limits[2].lobe", "no valve has it" },
        { "limits/2/provenance/source", "\"\"", "limits[2].provenance.source", "the document" },
        { "shims", "null", "shims", "says which are permitted" },
        { "shims/largestMm", "1.6", "shims.largestMm", "greater than smallestMm, which is 1.60 mm" },
        { "shims/stepMm", "0", "shims.stepMm", "above 0" },
        { "shims/diameterMm", "4", "shims.diameterMm", "5 to 40 mm" },
        { "shims/partCode", "\"\"", "shims.partCode", "the stores' code" },
        { "cold/highestC", "10", "cold.highestC", "greater than lowestC, which is 10 °C" },
        { "cold/soakHours", "-1", "cold.soakHours", "0 to 72 hours" },
        { "fasteners/0/propertyClass", "\"8.7\"", "fasteners[0].propertyClass", "one of 4.6, " },
        { "fasteners/0/into", "{ \"material\": \"steel\", \"engagementMm\": 0 }", "fasteners[0].into.engagementMm", "above 0 and at most 100 mm" },
        { "fasteners/0/into", "{ \"material\": \"lightAlloy\", \"shearStrengthMpa\": 5 }", "fasteners[0].into.shearStrengthMpa", "10 to 1000 MPa" },
        { "accesses/0/fasteners/0", "\"tank-screw\"", "accesses[0].fasteners[0]", "fasteners has no such code" },
        { "accesses/2/joints/0", "\"side-cover\"", "accesses[2].joints[0]", "joints has no such code" },
        { "accesses/2/joints", "[]", "joints[0].code", "opened by no access and no service item" },
        { "accesses/0/minutes", "-5", "accesses[0].minutes", "0 to 6000" },
        { "joints/0/fasteners", "[]", "joints[0].fasteners", "held by one at least" },
        { "joints/0/fasteners/0", "\"rear-head-cover-bolt\"", "fasteners[3].code", "belongs to 2 joints" },
        { "joints/0/fasteners/0", "\"rear-head-cover-bolt\"", "fasteners[2].code", "belongs to no joint" },
        { "joints/0/seals/0/quantity", "0", "joints[0].seals[0].quantity", "more than 0" },
        { "joints/0/code", "\"rear-head-cover\"", "joints[1].code", "each code once" },
        { "accesses/0/fasteners/0", "\"spark-plug\"", "fasteners[4].code", "names the joint, not the fastener" },
        { "fasteners/0/thread", "\"M8\"", "fasteners[0].thread", "ISO 261" },
        { "fasteners/0/count", "0", "fasteners[0].count", "1 to 64" },
        { "fasteners/2/stagesNm", "[10]", "fasteners[2].stagesNm[0]", "below the one after it, which is 10 N.m" },
        { "fasteners/11/angleDegrees", "400", "fasteners[11].angleDegrees", "at most 360" },
        { "fasteners/11/threadCompound", "null", "fasteners[11].threadCompound", "the thread is locked" },
        { "joints/0/seals/0/reuseAllowedBy", "\" \"", "joints[0].seals[0].reuseAllowedBy", "document and page" },
        { "fasteners/11/seals/0/reuseAllowedBy", "\"chapter 4\"", "fasteners[11].seals[0].reuseAllowedBy", "the fastener is used once" },
        { "fasteners/11/seals", "[]", "fasteners[11].seals", "the fastener is used once" },
        { "fasteners/11/seals/0/quantity", "7", "fasteners[11].seals", "replaces 7, but 8 are used once" },
        { "serviceItems/1/adjustmentItem", "\"coolant\"", "serviceItems[1].adjustmentItem", "no valve clearance adjustment" },
        { "serviceItems/0/adjustmentItem", "\"valve-clearance-adjustment\"", "serviceItems[0].adjustmentItem", "only a valve clearance check" },
        { "serviceItems/1/kind", "\"routine\"", "serviceItems", "no valve clearance check" },
        { "serviceItems/1/interval", "null", "serviceItems[1].interval", "by distance, by time or by both" },
        { "serviceItems/0/interval", "{}", "serviceItems[0].interval", "neither everyKm nor everyMonths" },
        { "serviceItems/0/interval/everyKm", "0", "serviceItems[0].interval.everyKm", "above 0" },
        { "serviceItems/6/interval", "{ \"everyMonths\": 36, \"firstKm\": 1000 }", "serviceItems[6].interval.firstKm", "without everyKm" },
        { "serviceItems/0/interval", "{ \"once\": true, \"everyKm\": 1000 }", "serviceItems[0].interval", "neither firstKm nor firstMonths nor afterDate" },
        { "serviceItems/0/interval", "{ \"once\": true, \"firstKm\": 1000, \"everyMonths\": 12 }", "serviceItems[0].interval.once", "only a first occurrence" },
        { "serviceItems/0/interval", "{ \"once\": true, \"firstKm\": 1000, \"counting\": \"onFixedGrid\" }", "serviceItems[0].interval.counting", "no grid" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"everyMiles\": 4000 }", "serviceItems[0].interval.everyMiles", "without everyKm" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"severe\": {} }", "serviceItems[0].interval.severe", "give one of the two" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"severe\": { \"factor\": 0.5, \"everyMonths\": 6 } }", "serviceItems[0].interval.severe", "give one of the two" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"severe\": { \"factor\": 1 } }", "serviceItems[0].interval.severe.factor", "above 0 and below 1" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"severe\": { \"everyMonths\": 13 } }", "serviceItems[0].interval.severe.everyMonths", "severe use shortens" },
        { "serviceItems/0/interval", "{ \"everyMonths\": 12, \"severe\": { \"everyKm\": 5000 } }", "serviceItems[0].interval.severe.everyKm", "has no such figure" },
        { "serviceItems/0/onlyFor", "{ \"fromModelYear\": 2024, \"toModelYear\": 2023 }", "serviceItems[0].onlyFor.toModelYear", "before fromModelYear 2024" },
        { "serviceItems/0/onlyFor", "{ \"withOptions\": [\"sidecar\"] }", "serviceItems[0].onlyFor.withOptions[0]", "options has no such code" },
        { "serviceItems/0/includes", "[\"nothing\"]", "serviceItems[0].includes[0]", "serviceItems has no such code" },
        { "serviceItems/0/includes", "[\"valve-clearance-check\"]", "serviceItems[0].includes[0]", "only a routine item" },
        { "serviceItems/0/includes", "[\"engine-oil-and-filter\"]", "serviceItems[0].includes", "cannot contain itself" },
        { "together", "{ \"km\": -1, \"days\": 10 }", "together.km", "0 to 20000 km" },
        { "together", "{ \"km\": 100, \"days\": 400 }", "together.days", "0 to 365 days" },
        { "options", "[{ \"code\": \"oiler\", \"name\": \"\" }]", "options[0].name", "is empty" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"always\" }, { \"kind\": \"leakCheck\", \"asked\": \"always\" }]", "visitChecks[1].kind", "each kind once" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"afterItems\" }]", "visitChecks[0].afterItems", "name the service items" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"afterItems\", \"afterItems\": [\"nothing\"] }]", "visitChecks[0].afterItems[0]", "serviceItems has no such code" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"always\", \"afterItems\": [\"engine-oil-and-filter\"] }]", "visitChecks[0].afterItems", "leave one of them out" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"always\", \"note\": \" \" }]", "visitChecks[0].note", "is empty" },
        { "visitChecks", "[{ \"kind\": \"leakCheck\", \"asked\": \"always\", \"places\": [\"fuel line\", \"Fuel line\"] }]", "visitChecks[0].places[1]", "second time" },
        { "visitChecks", "[{ \"kind\": \"testRide\", \"asked\": \"always\", \"places\": [\"fuel line\"] }]", "visitChecks[0].places", "only leak check has it" },
        { "visitChecks", "[{ \"kind\": \"recheck\", \"asked\": \"always\" }]", "visitChecks[0].kind", "stands in afterWork.recheck" },
        { "visitChecks", "[{ \"kind\": \"recheck\", \"asked\": \"always\", \"fastenersAgain\": [\"axle\"] }]", "visitChecks[0].fastenersAgain[0]", "fasteners has no such code" },
        { "visitChecks", "[{ \"kind\": \"balance\", \"asked\": \"always\", \"balance\": { \"speedRpm\": 100, \"speedToleranceRpm\": 50, \"toleranceKpa\": 2 } }]", "visitChecks[0].balance.speedRpm", "500 to 6000" },
        { "visitChecks", "[{ \"kind\": \"balance\", \"asked\": \"always\", \"balance\": { \"speedRpm\": 1300, \"speedToleranceRpm\": 50, \"toleranceKpa\": 0 } }]", "visitChecks[0].balance.toleranceKpa", "above 0" },
        { "visitChecks", "[{ \"kind\": \"balance\", \"asked\": \"always\", \"balance\": { \"speedRpm\": 1300, \"speedToleranceRpm\": 50, \"toleranceKpa\": 2, \"referenceCylinder\": 3 } }]", "visitChecks[0].balance.referenceCylinder", "no such cylinder" },
        { "serviceItems/0/labourMinutes", "-1", "serviceItems[0].labourMinutes", "0 to 6000" },
        { "serviceItems/0/parts/0/quantity", "0", "serviceItems[0].parts[0].quantity", "more than 0" },
        { "serviceItems/0/joints/0", "\"sump\"", "serviceItems[0].joints[0]", "joints has no such code" },
        { "serviceItems/5/accesses/0", "\"seat-off\"", "serviceItems[5].accesses[0]", "accesses has no such code" },
        { "serviceItems/0/cautions/0", "\"beware\"", "serviceItems[0].cautions[0]", "no such caution" },
        { "serviceItems/1/code", "\"engine-oil-and-filter\"", "serviceItems[1].code", "each code once" },
        { "provenance/edition", "\"\"", "provenance.edition", "the document's edition" },
        { "provenance/checkedBy", "null", "provenance.checkedBy", "who checked it" },
    };

    [Theory]
    [MemberData(nameof(PlantedFaults))]
    public void A_planted_fault_is_found_at_its_path(string place, string json, string path, string says)
    {
        var findings = SpecificationCheck.Of(Planted(SeedFile.VTwin, place, json));

        Assert.Contains(findings.Faults, f => f.Field == path && f.Sentence.Contains(says, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.39")]
    [InlineData("1.01")]
    public void A_lever_ratio_outside_the_usual_asks_for_confirmation_and_is_no_fault(string ratio)
    {
        var findings = SpecificationCheck.Of(Planted(SeedFile.VTwin, "limits/0/leverRatio", ratio));

        Assert.Empty(findings.Faults);
        Assert.Equal("limits[0].leverRatio", Assert.Single(findings.ToConfirm).Field);
    }

    [Theory]
    [InlineData("0.4")]
    [InlineData("1")]
    public void The_ends_of_the_usual_lever_ratios_need_no_confirmation(string ratio) =>
        Assert.Empty(SpecificationCheck.Of(Planted(SeedFile.VTwin, "limits/0/leverRatio", ratio)).ToConfirm);

    [Fact]
    public void A_bucket_has_no_lever()
    {
        var findings = SpecificationCheck.Of(Planted(SeedFile.Four, "limits/0/leverRatio", "0.6"));

        Assert.Contains("only finger followers", Assert.Single(findings.Faults).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Screw_and_locknut_has_no_shims()
    {
        var shims = SeedFile.Write(SeedFile.Four.Specification);
        var range = JsonNode.Parse(shims)!["shims"]!.ToJsonString();

        var findings = SpecificationCheck.Of(Planted(SeedFile.Single, "shims", range));

        Assert.Equal("shims", Assert.Single(findings.Faults).Field);
    }

    [Theory]
    [InlineData("hydraulic")]
    [InlineData("positivelyClosed")]
    public void Other_valve_trains_do_not_exist_here(string kind) => Assert.Throws<System.Text.Json.JsonException>(
        () => Planted(SeedFile.VTwin, "valveTrain", $"\"{kind}\""));

    [Theory]
    [InlineData("fasteners/0/torqueNm")]
    [InlineData("limits/0/lowerMm")]
    [InlineData("measuringPositions/0/lobes")]
    public void What_a_record_asks_for_must_be_there(string place) => Assert.Throws<System.Text.Json.JsonException>(
        () => Planted(SeedFile.VTwin, place, null));

    [Fact]
    public void What_no_record_knows_is_refused() => Assert.Throws<System.Text.Json.JsonException>(
        () => Planted(SeedFile.VTwin, "limits/0/colour", "\"red\""));

    /// <summary>The model's specification with other JSON at a place; nothing takes the member out.</summary>
    private static EngineSpecification Planted(SeedEngineModel model, string place, string? json)
    {
        var root = JsonNode.Parse(SeedFile.Write(model.Specification))!;
        var steps = place.Split('/');
        var parent = steps[..^1].Aggregate(root, (node, step) => int.TryParse(step, out var index) ? node[index]! : node[step]!);
        if (json is null)
        {
            Assert.True(((JsonObject)parent).Remove(steps[^1]));
        }
        else if (int.TryParse(steps[^1], out var index))
        {
            parent[index] = JsonNode.Parse(json);
        }
        else
        {
            parent[steps[^1]] = JsonNode.Parse(json);
        }

        return SeedFile.Parse(root.ToJsonString());
    }
}
