using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Control.Tests.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>A block that ran: its line (from 1), the state it met and the one it left.</summary>
sealed record Visit(string? File, int Line, ControlState Before, ControlState After);

/// <summary>Runs a whole program in the control's order and keeps what came of it.</summary>
sealed class FlowSession
{
    public readonly List<Visit> Visits = [];
    public readonly List<Point3> Places = [];
    public readonly List<(FaultKind Kind, int Line, double A, double B)> Faults = [];
    public readonly FlowRunner Runner;

    public FlowSession(string program, ICalledPrograms? programs = null, int mostBlocks = 100_000, bool skip = false, Setup? setup = null, MachineProfile? machine = null)
    {
        var executor = new BlockExecutor(machine ?? MachineProfile.IsoMill, setup ?? Setup.None, skip);
        Runner = new FlowRunner(executor, FlowText.Of(SourceText.From(program.ReplaceLineEndings("\n")), null), programs, mostBlocks);
        while (Runner.MoveNext())
        {
            Visits.Add(new Visit(Runner.Text.Name, Runner.Line + 1, Runner.Step.Before, Runner.Step.After));
            foreach (ref readonly var move in Runner.Step.Moves.Items)
                if (move.IsMotion)
                    Places.Add(move.To);
            foreach (ref readonly var fault in Runner.Step.Faults.Items)
                Faults.Add((fault.Kind, Runner.Line + 1, fault.A, fault.B));
        }
    }

    public FlowEnd End => Runner.End;

    /// <summary>Where the moves lead, X alone or all that is known: "1 2 5".</summary>
    public string X => string.Join(' ', Places.Select(place => Session.Number(place.X)));

    /// <summary>The lines that ran, in order.</summary>
    public string Lines => string.Join(' ', Visits.Select(visit => visit.Line));

    public IEnumerable<FaultKind> FaultKinds => Faults.Select(fault => fault.Kind);

    public double Variable(int number) => (Runner.State.Variables ?? Variables.None).Get(number);
}
