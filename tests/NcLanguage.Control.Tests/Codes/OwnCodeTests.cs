using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Control.Tests.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Codes;

/// <summary>Codes that a machine has of its own (common practice: whoever builds it gives M codes to what it has beside the axes).</summary>
public sealed class OwnCodeTests
{
    static readonly MachineProfile Mill = MachineProfile.IsoMill with
    {
        Codes = [new('G', 51, "smooths the path", [], "QE"), new('M', 100, "closes the vise", [], ""), new('M', 130, "spindle and coolant", ["M3", "M8"], "")],
    };

    static Session Start() => new(machine: Mill, start: default(Point3));

    /// <summary>The file may name no code of the table, and every other.</summary>
    [Fact]
    public void Those_of_the_table_are_no_machines_own() => Assert.Equal(CodeTable.All.Select(code => code.Text).Order(), MachineCode.Standard.Order());

    [Fact]
    public void It_does_what_the_codes_do_that_it_stands_for()
    {
        var session = Start().Run("S800 M13", "G1 X5 F100");
        Assert.Empty(session.Faults);
        Assert.Equal((SpindleState.Clockwise, CoolantState.Flood), (session.State.Spindle, session.State.Coolant));
        Assert.Equal(new Session(machine: Mill, start: default(Point3)).Run("S800 M3 M8", "G1 X5 F100").State, session.State);
        Assert.Equal([FaultKind.CodesConflict], Start().Run("S800 M13 M4").Faults.Select(fault => fault.Kind));
    }

    [Fact]
    public void Without_such_it_changes_nothing_and_takes_its_words()
    {
        var session = Start().Run("G0 X1", "G5.1 Q1 E0.01", "M10", "G5.1 X3");
        Assert.Empty(session.Faults);
        Assert.Equal(["rapid 1 0 0", "rapid 3 0 0"], session.Log);
        Assert.Equal(FaultKind.WordWithoutEffect, Assert.Single(session.Run("M10 Q1").Faults).Kind);
        Assert.Equal(FaultKind.CodeUnknown, Assert.Single(session.Clear().Run("M11").Faults).Kind);
    }
}
