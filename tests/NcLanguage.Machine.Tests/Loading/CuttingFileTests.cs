using System.Text;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Tests.Loading;

public class CuttingFileTests
{
    const double MetresPerFoot = 0.3048;

    static CuttingTable Read(string rows, CuttingTable? behind = null, string units = "mm", string materials = "")
    {
        var (table, problems) = CuttingFile.Read("nc.cutting.json", Encoding.UTF8.GetBytes($$"""{ "units": "{{units}}", "materials": [{{materials}}], "rows": [{{rows}}] }"""), behind);
        Assert.Empty(problems);
        return table;
    }

    [Theory]
    [InlineData("""{ "rows": [ { "kind": ["drill"], "speed": [⟦9⟧, 5], "source": "s" } ] }""", "setup-value", "9", "above its greatest, 5")]
    [InlineData("""{ "rows": [ { "kind": ["drill"], "speed": [⟦"9"⟧, 5], "source": "s" } ] }""", "setup-value", "The least of \"speed\" must be a number")]
    [InlineData("""{ "rows": [ { "kind": ["drill"], "speed": [⟦0⟧, 5], "source": "s" } ] }""", "setup-value", "must be above 0")]
    [InlineData("""{ "rows": [ { "kind": [⟦"dril"⟧], "speed": [4, 5], "source": "s" } ] }""", "setup-value", "did you mean \"drill\"")]
    [InlineData("""{ "rows": [ { "kind": ⟦[]⟧, "speed": [4, 5], "source": "s" } ] }""", "setup-value", "names no kind")]
    [InlineData("""{ "rows": [ ⟦{⟧ "kind": ["drill"], "source": "s" } ] }""", "setup-value", "needs \"speed\"")]
    [InlineData("""{ "rows": [ ⟦{⟧ "kind": ["drill"], "speed": [4, 5] } ] }""", "setup-value", "needs \"source\"")]
    [InlineData("""{ "rows": [ { "kind": ["drill"], ⟦"sped"⟧: [4, 5], "feedPerTurn": [1, 2], "source": "s" } ] }""", "setup-unknown-key", "did you mean \"speed\"")]
    [InlineData("""{ "rows": [ { "kind": ["drill"], "material": ⟦"brass"⟧, "speed": [4, 5], "source": "s" } ] }""", "setup-value", "must be a list")]
    [InlineData("{\n  \"materials\": [ ⟦{⟧ } ]\n}", "setup-value", "needs \"name\"")]
    public void A_mistake_is_told_at_its_place(string source, string name, params string[] parts)
    {
        var marked = new Marked(source);
        marked.IsTheOnlyPlace(CuttingFile.Read("nc.cutting.json", marked.Bytes, null).Problems, name, parts);
    }

    [Fact]
    public void A_row_with_a_mistake_in_what_it_is_for_is_not_read_for_everything()
    {
        var table = CuttingFile.Read("nc.cutting.json", """{ "rows": [ { "kind": ["drill"], "material": [5], "speed": [4, 5], "source": "s" } ], "materials": [ { "name": "brass" } ] }"""u8, null).Table;
        Assert.Null(table.Speed("brass", "HSS", ToolKind.Drill, 5));
    }

    /// <summary>The schema says that a row without a material is for all. The executable's own rows for all come from metals.</summary>
    [Fact]
    public void A_row_of_the_users_that_names_no_material_is_for_one_that_nobody_knows_too()
    {
        const string Rows = """{ "kind": ["end-mill"], "speed": [100, 200], "source": "s" }, { "kind": ["drill"], "toolMaterial": ["HSS"], "speed": [20, 30], "source": "s" }""";
        var table = Read(Rows, CuttingTable.BuiltIn);
        Assert.Equal((100, "all materials"), (table.Speed("beech", "carbide", ToolKind.EndMill, 5)!.Value.Least, table.Speed("beech", "carbide", ToolKind.EndMill, 5)!.Value.Material));
        Assert.Equal(100, table.Speed(null, null, ToolKind.EndMill, 5)!.Value.Least);
        Assert.Equal(20, table.Speed(null, "HSS", ToolKind.Drill, 5)!.Value.Least);
        Assert.Null(table.Speed(null, null, ToolKind.Drill, 5));
        Assert.Null(table.Speed(null, "carbide", ToolKind.Drill, 5));
        Assert.NotNull(table.FeedPerTurn("aluminium", "HSS", ToolKind.Drill, 5));
        Assert.Null(table.FeedPerTurn("beech", "HSS", ToolKind.Drill, 5));
        Assert.Null(table.FeedPerTurn(null, "HSS", ToolKind.Drill, 5));
    }

    [Fact]
    public void A_file_that_is_none_leaves_the_executables_table()
    {
        var (table, problems) = CuttingFile.Read("nc.cutting.json", "["u8, CuttingTable.BuiltIn);
        Assert.Single(problems);
        Assert.NotNull(table.Speed("aluminium", "HSS", ToolKind.Drill, 5));
    }

    /// <summary>The foot is 0.3048 m exactly.</summary>
    [Fact]
    public void Inches_and_feet_become_millimetres_and_metres()
    {
        var table = Read("""{ "kind": ["drill"], "diameter": [0.25, 0.5], "speed": [100, 200], "feedPerTurn": [0.002, 0.004], "source": "s" }""", units: "inch", materials: """{ "name": "brass" }""");
        Assert.Equal((30.48, 60.96), (table.Speed("brass", "HSS", ToolKind.Drill, 6.35)!.Value.Least, table.Speed("brass", "HSS", ToolKind.Drill, 12.7)!.Value.Greatest));
        Assert.Equal(0.0508, table.FeedPerTurn("brass", "HSS", ToolKind.Drill, 10)!.Value.Least, 1e-12);
        Assert.Null(table.Speed("brass", "HSS", ToolKind.Drill, 6.3));
        Assert.Null(table.Speed("brass", "HSS", ToolKind.Drill, 12.8));
    }

    [Fact]
    public void A_users_rows_come_first_and_the_others_stay()
    {
        var table = Read("""{ "material": ["aluminium"], "kind": ["drill"], "toolMaterial": ["HSS"], "speed": [40, 50], "source": "our drills" }""", CuttingTable.BuiltIn);
        Assert.Equal(new CuttingRange(40, 50, "aluminium", "our drills"), table.Speed("Aluminum", "hss", ToolKind.Drill, 5));
        Assert.Equal(CuttingTable.BuiltIn.Speed("brass", "HSS", ToolKind.Drill, 5), table.Speed("brass", "HSS", ToolKind.Drill, 5));
        Assert.Equal(CuttingTable.BuiltIn.FeedPerTurn("aluminium", "HSS", ToolKind.Drill, 5), table.FeedPerTurn("aluminium", "HSS", ToolKind.Drill, 5));
    }

    [Fact]
    public void A_material_without_rows_is_read_as_its_family_and_a_circle_of_families_ends()
    {
        const string materials = """{ "name": "A", "family": "B" }, { "name": "B", "family": "A" }, { "name": "our casting", "family": "grey iron" }""";
        var table = Read("""{ "material": ["C"], "kind": ["drill"], "speed": [1, 2], "source": "s" }""", CuttingTable.BuiltIn, materials: materials);
        Assert.Null(table.Speed("A", "HSS", ToolKind.Drill, 5));
        Assert.Equal("grey iron", table.Speed("our casting", "HSS", ToolKind.Drill, 5)?.Material);
    }

    /// <summary>HSS drilling speeds in ft/min of the U.S. Navy training course on drilling; carbide at 2 to 3 times, carbon steel at half of them.</summary>
    [Theory]
    [InlineData("low-carbon steel", 80, 110)]
    [InlineData("medium-carbon steel", 70, 80)]
    [InlineData("alloy steel", 50, 70)]
    [InlineData("stainless steel", 30, 40)]
    [InlineData("brass", 200, 300)]
    [InlineData("bronze", 200, 300)]
    [InlineData("aluminium", 200, 300)]
    [InlineData("nickel-copper alloy", 40, 50)]
    [InlineData("cast iron", 70, 150)]
    public void Drilling_speeds_of_the_course(string material, double least, double greatest)
    {
        Check(material, "HSS", least, greatest);
        Check(material, "carbide", 2 * least, 3 * greatest);
        Check(material, "carbon steel", least / 2, greatest / 2);

        static void Check(string material, string tool, double least, double greatest)
        {
            var range = CuttingTable.BuiltIn.Speed(material, tool, ToolKind.Drill, 8)!.Value;
            Assert.Equal(least, range.Least / MetresPerFoot, 1e-9);
            Assert.Equal(greatest, range.Greatest / MetresPerFoot, 1e-9);
        }
    }

    /// <summary>Feeds in in/rev by diameter in inches, of the same course; at a limit both rows count.</summary>
    [Theory]
    [InlineData(0.1, 0.001, 0.002)]
    [InlineData(0.2, 0.002, 0.004)]
    [InlineData(0.3, 0.004, 0.007)]
    [InlineData(0.75, 0.007, 0.015)]
    [InlineData(1.5, 0.015, 0.025)]
    [InlineData(0.25, 0.002, 0.007)]
    public void Drilling_feeds_of_the_course(double diameter, double least, double greatest)
    {
        var drill = CuttingTable.BuiltIn.FeedPerTurn("aluminium", "HSS", ToolKind.Drill, diameter * 25.4)!.Value;
        Assert.Equal((least, greatest), (Math.Round(drill.Least / 25.4, 9), Math.Round(drill.Greatest / 25.4, 9)));
        // A reamer takes twice the feed (course sheet on reaming).
        var reamer = CuttingTable.BuiltIn.FeedPerTurn("aluminium", "HSS", ToolKind.Reamer, diameter * 25.4)!.Value;
        Assert.Equal((2 * least, 2 * greatest), (Math.Round(reamer.Least / 25.4, 9), Math.Round(reamer.Greatest / 25.4, 9)));
    }

    /// <summary>Recommended cutting speeds for drilling and reaming in ft/min (the layout of Machinery's Handbook): HSS drill, HSS reamer, carbide reamer,
    /// from the harder to the softer row.</summary>
    [Theory]
    [InlineData("1213", 120, 120, 80, 80, 400, 400)]
    [InlineData("1117", 110, 110, 75, 75, 375, 375)]
    [InlineData("12L14", 130, 130, 85, 85, 400, 400)]
    [InlineData("1018", 90, 100, 60, 65, 275, 300)]
    [InlineData("1045", 75, 90, 50, 60, 200, 250)]
    [InlineData("1095", 70, 70, 45, 45, 200, 200)]
    [InlineData("4140", 55, 90, 30, 60, 200, 250)]
    [InlineData("41L40", 100, 100, 65, 65, 285, 285)]
    [InlineData("grey iron", 80, 100, 55, 65, 180, 300)]
    [InlineData("ductile iron", 100, 100, 65, 65, 300, 300)]
    [InlineData("malleable iron", 110, 110, 75, 75, 325, 325)]
    [InlineData("cast steel 1020", 100, 100, 65, 65, 250, 250)]
    [InlineData("303", 85, 85, 55, 55, 225, 225)]
    [InlineData("304", 55, 55, 35, 35, 150, 150)]
    [InlineData("316", 50, 50, 30, 30, 150, 150)]
    [InlineData("420", 75, 75, 50, 50, 225, 225)]
    [InlineData("O1", 45, 45, 30, 30, 150, 150)]
    [InlineData("D2", 30, 30, 20, 20, 80, 80)]
    public void Speeds_of_the_table_for_drilling_and_reaming(string material, double drillLeast, double drill, double reamerLeast, double reamer, double carbideLeast, double carbide)
    {
        Check("HSS", ToolKind.Drill, drillLeast, drill);
        Check("HSS", ToolKind.Reamer, reamerLeast, reamer);
        Check("carbide", ToolKind.Reamer, carbideLeast, carbide);

        void Check(string tool, ToolKind kind, double least, double greatest)
        {
            var range = CuttingTable.BuiltIn.Speed(material, tool, kind, 8)!.Value;
            Assert.Equal((least, greatest), (Math.Round(range.Least / MetresPerFoot, 9), Math.Round(range.Greatest / MetresPerFoot, 9)));
        }
    }

    /// <summary>Reaming at a third to a half of the drilling speed (textbook on reaming), where the table has no speed of its own.</summary>
    [Fact]
    public void A_reamer_without_a_row_of_its_own()
    {
        var range = CuttingTable.BuiltIn.Speed("aluminium", "HSS", ToolKind.Reamer, 8)!.Value;
        Assert.Equal((67.0, 150.0), (Math.Round(range.Least / MetresPerFoot, 9), Math.Round(range.Greatest / MetresPerFoot, 9)));
    }
}
