using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.Trace;

/// <summary>Programs cut into operations. Rapids at 100 mm/s with no time lost on speeding up, so that times can be reckoned by hand.</summary>
static class Operations
{
    /// <summary>A plate of 100 × 40 with a clamp of 25 across it, from X28 to X44; T1 a drill of 6, T2 an end mill of 10, T9 a probe.</summary>
    public const string Plate = """
        { "stock": { "min": [0, 0, -20], "max": [100, 40, 0] }, "clearance": 2,
          "obstacles": [ { "name": "bridge", "min": [28, -20, 0], "max": [44, 60, 25] } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "lengthOffset": 1 }, { "number": 2, "kind": "end-mill", "diameter": 10 },
                     { "number": 9, "kind": "probe", "diameter": 4 } ] }
        """;

    public static MachineProfile Machine { get; } = MachineProfile.IsoMill with
    {
        Rapid = new Point3(6000, 6000, 6000), Acceleration = 1e18, ToolChangeSeconds = 5,
    };

    public static OperationList Of(string program, string? setup = null, string readings = "") => OperationRun.Of(
        ProgramRun.Create(SourceText.From(program), JobOf(setup, readings), [], [], CancellationToken.None), CancellationToken.None);

    public static Job JobOf(string? setup, string readings = "")
    {
        var machine = Machine;
        foreach (var reading in readings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            machine = ReadingOption.Apply(machine, reading, out var error);
            Assert.Null(error);
        }
        return new Job(machine, setup is null ? Setup.None : SetupOf(setup));
    }

    public static Setup SetupOf(string json)
    {
        var read = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Setup;
    }
}
