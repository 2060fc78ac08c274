using System.Text;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Tests.Schema;

namespace NcLanguage.Machine.Tests.Loading;

public class MachineFileTests
{
    static readonly MachineProfile Shop = MachineProfile.TrainingMill with
    {
        Name = "shop",
        Path = "shop.machine.json",
        IsChosen = true,
        TravelX = new(-1, 0),
        TravelY = new(-2, 0),
        TravelZ = new(-3, 0),
        Home = new(1, 1, 1),
        ToolChange = new(2, 2, 2),
        Rapid = new(1000, 2000, 3000),
        Acceleration = 500,
        MaxFeed = 700,
        Spindle = new(100, 200),
        ToolChangeSeconds = 9,
        Tools = 8,
    };

    static MachineProfile? Resolve(string name) => name == "shop" ? Shop : MachineProfile.FindBuiltIn(name);

    static MachineReadResult Read(string text) => MachineFile.Read("shops/mill.machine.json", Encoding.UTF8.GetBytes(text), Resolve);

    static MachineProfile Check(string source, string name, params string[] parts)
    {
        var marked = new Marked(source);
        var (machine, problems) = MachineFile.Read("mill.machine.json", marked.Bytes, Resolve);
        marked.IsTheOnlyPlace(problems, name, parts);
        return machine;
    }

    [Fact]
    public void Every_member_is_read()
    {
        var (machine, problems) = Read(Samples.Machine);

        Assert.Empty(problems);
        var expected = new MachineProfile
        {
            Name = "the mill by the door",
            Path = "shops/mill.machine.json",
            IsChosen = true,
            TravelX = new(-500, 0),
            TravelY = new(-400, 0),
            TravelZ = new(-450, 0),
            Home = default,
            ToolChange = new(0, 0, -10),
            Rapid = new(20000, 20000, 15000),
            Acceleration = 2500,
            MaxFeed = 8000,
            Spindle = new(60, 8000),
            ToolChangeSeconds = 5,
            Tools = 20,
            Readings = new Readings
            {
                Dwell = DwellReading.ByPoint,
                Integers = IntegerReading.Increments,
                HolePositions = HolePositionReading.Incremental,
                ReturnLevel = ReturnLevelReading.BeforeMove,
                RapidPath = RapidPathReading.PerAxis,
                Repeats = RepeatReading.K,
                ArcCentre = ArcCentreReading.Absolute,
                ToolChange = ToolChangeReading.T,
                Units = UnitReading.G70G71,
                LengthOffset = LengthOffsetReading.WithTool,
                StopsAct = StopReading.AfterMotion,
                IncrementalR = IncrementalRReading.InitialLevel,
                PeckReturn = PeckReturnReading.RLevel,
                ZeroRepeats = ZeroRepeatsReading.KeepsCycle,
                BackBoring = BackBoringReading.FromRToZ,
                RapidsEndCycle = false,
                ProgramMarks = new ProgramMarks { Percent = true, Number = true, LongestBlock = 80, LowerCase = false, Characters = "%()+-./:" },
            },
        };
        Assert.Equal(expected, machine with { Codes = [] });
        Assert.Equal<MachineCode>([new('G', 51, "smooths the path", [], "QR"), new('M', 100, "closes the vise", [], ""), new MachineCode('M', 130, "spindle and coolant", ["M3", "M8"], "")], machine.Codes);
        Assert.Equal(["G5.1", "M10", "M13"], machine.Codes.Select(code => code.Text));
    }

    [Fact]
    public void Codes_of_a_base_stay_beside_those_of_the_file()
    {
        MachineCode vise = new('M', 100, "closes the vise", [], ""), air = new('M', 880, "air through the spindle", [], "");
        var (machine, problems) = MachineFile.Read("mill.machine.json", """{ "base": "shop", "codes": { "M10": { "does": "opens the vise", "as": null, "words": null } } }"""u8, _ => Shop with { Codes = [vise, air] });

        Assert.Empty(problems);
        Assert.Equal<MachineCode>([vise with { Does = "opens the vise" }, air], machine.Codes);
    }

    [Theory]
    [InlineData("""{ "codes": { ⟦"M3"⟧: { "does": "x" } } }""", "setup-value", "keeps the meaning")]
    [InlineData("""{ "codes": { ⟦"M013"⟧: { "does": "x" } } }""", "setup-unknown-key", "no name of a code")]
    [InlineData("""{ "codes": { ⟦"X5"⟧: { "does": "x" } } }""", "setup-unknown-key", "no name of a code")]
    [InlineData("""{ "codes": { ⟦"M1000"⟧: { "does": "x" } } }""", "setup-unknown-key", "no name of a code")]
    [InlineData("""{ "codes": { "M13": ⟦{⟧ "as": "M3" } } }""", "setup-value", "needs \"does\"")]
    [InlineData("""{ "codes": { "M13": ⟦"spindle"⟧ } }""", "setup-value", "\"M13\" must be an object")]
    [InlineData("""{ "codes": { "M13": { "does": "x", "as": ⟦"M3 M30"⟧ } } }""", "setup-value", "names M30")]
    [InlineData("""{ "codes": { "M13": { "does": "x", "words": ⟦"PX"⟧ } } }""", "setup-value", "capital letters")]
    [InlineData("""{ "codes": { "M13": { "does": "x" }, ⟦"M13"⟧: { "does": "y" } } }""", "setup-value", "given 2 times")]
    [InlineData("""{ "codes": ⟦[]⟧ }""", "setup-value", "must be an object")]
    public void What_is_wrong_with_a_code_is_told_at_its_place(string source, string name, string part) => Check(source, name, part.Replace("\\", "", StringComparison.Ordinal));

    [Fact]
    public void What_the_file_leaves_out_stays_as_the_base_has_it()
    {
        var (machine, problems) = Read("""{ "base": "shop", "rapid": { "z": 50 }, "travel": { "y": [-5, 5] }, "spindle": { "max": 300 }, "readings": { "dwell": "seconds" } }""");

        Assert.Empty(problems);
        var expected = Shop with
        {
            Name = "mill.machine.json",
            Path = "shops/mill.machine.json",
            TravelY = new(-5, 5),
            Rapid = new(1000, 2000, 50),
            Spindle = new(100, 300),
            Readings = Shop.Readings with { Dwell = DwellReading.Seconds },
        };
        Assert.Equal(expected, machine);
    }

    // The international inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    [Fact]
    public void Lengths_and_rates_of_an_inch_file_are_converted()
    {
        var (machine, problems) = Read("""
            { "units": "inch", "travel": { "x": [-20, 0] }, "home": [1, 2, 3], "toolChange": [0, 0, 1], "rapid": 600, "acceleration": 100, "maxFeed": 300,
              "spindle": { "max": 8000 }, "toolChangeSeconds": 4 }
            """);

        Assert.Empty(problems);
        Assert.Equal(new Limits(-508, 0), machine.TravelX);
        Assert.Equal(25.4, machine.Home.X, 9);
        Assert.Equal(76.2, machine.Home.Z, 9);
        Assert.Equal(new Point3(0, 0, 25.4), machine.ToolChange);
        Assert.Equal(new Point3(15240, 15240, 15240), machine.Rapid);
        Assert.Equal((2540, 7620.0), (machine.Acceleration, machine.MaxFeed));
        Assert.Equal((new Limits(0, 8000), 4), (machine.Spindle, machine.ToolChangeSeconds));
    }

    [Fact]
    public void A_wrong_value_is_not_known_where_it_may_be_and_else_the_base_stays_and_is_named()
    {
        Assert.Null(Check("""{ "base": "shop", "maxFeed": ⟦-5⟧ }""", "setup-value", "is -5", "not given").MaxFeed);
        Assert.Null(Check("""{ "base": "shop", "tools": ⟦2.5⟧ }""", "setup-value", "whole number").Tools);
        Assert.Null(Check("""{ "base": "shop", "spindle": { "min": ⟦9000⟧, "max": 8000 } }""", "setup-value", "9000", "above its max, 8000").Spindle);
        Assert.Null(Check("""{ "base": "shop", "spindle": ⟦{⟧ "min": 9000 } }""", "setup-value", "needs \"max\"").Spindle);
        Assert.Null(Check("""{ "base": "shop", "maxFeed": 5, ⟦"maxFeed"⟧: 6 }""", "setup-value", "given 2 times").MaxFeed);
        Assert.Null(Check("""{ "base": "shop", "travel": ⟦[]⟧ }""", "setup-value", "must be an object").TravelX);
        Assert.Null(Check("""{ "base": "shop", "travel": { "x": [⟦true⟧, 0] } }""", "setup-value", "The min of \"x\" must be a number").TravelX);
        Assert.Equal(Point3.Unknown, Check("""{ "base": "shop", "home": ⟦0⟧ }""", "setup-value", "where it lies is not known").Home);
        Assert.Equal(Point3.Unknown, Check("""{ "base": "shop", "toolChange": [0, ⟦"x"⟧, 0] }""", "setup-value", "Y of \"toolChange\"").ToolChange);
        Assert.Equal(Shop.Rapid, Check("""{ "base": "shop", "rapid": ⟦0⟧ }""", "setup-value", "above 0", "rates of the base stay").Rapid);
        Assert.Equal(Shop.Rapid, Check("""{ "base": "shop", "rapid": { "y": ⟦-1⟧ } }""", "setup-value", "the base's 2000 mm/min stays").Rapid);
        Assert.Equal(Shop.Rapid, Check("""{ "base": "shop", "rapid": ⟦[]⟧ }""", "setup-value", "a number for all axes or an object").Rapid);
        Assert.Equal(500, Check("""{ "base": "shop", "acceleration": ⟦"fast"⟧ }""", "setup-value", "the base's 500 mm/s² stays").Acceleration);
        Assert.Equal(9, Check("""{ "base": "shop", "toolChangeSeconds": ⟦-1⟧ }""", "setup-value", "the base's 9 s stays").ToolChangeSeconds);
        Assert.Equal("mill.machine.json", Check("""{ "name": ⟦""⟧ }""", "setup-value", "is blank").Name);
    }

    [Fact]
    public void A_travel_that_runs_backwards_names_its_axis()
    {
        var machine = Check("""{ "base": "shop", "travel": { "x": [-500, 0], "y": [⟦0⟧, -400] } }""", "setup-value", "In Y", "0", "above its max, -400");

        Assert.Equal((new Limits(-500, 0), null, new Limits(-3, 0)), (machine.TravelX, machine.TravelY, machine.TravelZ));
    }

    [Theory]
    [InlineData("""{ "base": "training-mill", "readings": { "dwell": ⟦"ms"⟧ } }""", "milliseconds, seconds, byPoint", "the base's milliseconds stays")]
    [InlineData("""{ "base": "training-mill", "readings": { "holePositions": ⟦"incrmental"⟧ } }""", "did you mean \"incremental\"?", "the base's incremental stays")]
    [InlineData("""{ "base": "training-mill", "readings": { "rapidsEndCycle": ⟦"false"⟧ } }""", "true or false", "the base's true stays")]
    [InlineData("""{ "base": "training-mill", "readings": ⟦5⟧ }""", "must be an object", "readings of the base stay")]
    [InlineData("""{ "base": "training-mill", "readings": { "programMarks": { "longestBlock": ⟦-1⟧ } } }""", "at least 1", "what the base says stays")]
    public void A_wrong_choice_lists_the_choices_and_names_the_one_in_force(string source, params string[] parts) =>
        Assert.Equal(MachineProfile.TrainingMill.Readings, Check(source, "setup-value", parts).Readings);

    [Fact]
    public void An_unknown_reading_names_the_nearest() =>
        Check("""{ "readings": { ⟦"holePosition"⟧: "incremental" } }""", "setup-unknown-key", "did you mean \"holePositions\"?");

    [Theory]
    [InlineData("""{ "base": ⟦"iso-mil"⟧, "maxFeed": 8000 }""", "did you mean \"iso-mill\"?", "iso-mill is used instead")]
    [InlineData("""{ "base": ⟦"lathe"⟧, "maxFeed": 8000 }""", "neither a built-in profile (iso-mill, training-mill) nor a file")]
    [InlineData("""{ "base": ⟦5⟧, "maxFeed": 8000 }""", "must be text")]
    [InlineData("""{ "base": "shop", ⟦"base"⟧: "iso-mill", "maxFeed": 8000 }""", "given 2 times")]
    public void A_machine_whose_base_is_not_known_counts_as_not_chosen(string source, params string[] parts)
    {
        var machine = Check(source, "setup-value", parts);

        Assert.False(machine.IsChosen);
        Assert.Equal((8000, MachineProfile.IsoMill.Readings), (machine.MaxFeed!.Value, machine.Readings));
    }

    [Fact]
    public void A_wrong_unit_leaves_every_length_unknown()
    {
        var machine = Check("""{ "base": "shop", "units": ⟦"m"⟧, "travel": { "x": [0, 1] }, "home": [1, 2, 3], "maxFeed": 5, "rapid": 6 }""", "setup-value", "no length");

        Assert.Equal((null, null, Shop.Rapid), (machine.TravelX, machine.MaxFeed, machine.Rapid));
        Assert.Equal(Point3.Unknown, machine.Home);
    }

    [Fact]
    public void A_file_that_is_no_json_leaves_iso_mill_unchosen()
    {
        var machine = Check("{ \"base\": ⟦iso-mill⟧ }", "setup-malformed", "Nothing of this machine is used");

        Assert.Equal(MachineProfile.IsoMill with { Path = "mill.machine.json" }, machine);
    }
}
