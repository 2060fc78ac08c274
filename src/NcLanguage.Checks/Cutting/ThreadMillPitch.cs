using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A helix of a thread mill that does not climb by the pitch of its teeth.</summary>
public sealed class ThreadMillPitch : Rule
{
    /// <summary>How far the lead may be off, in pitches: levels are rounded, and a thread is milled a little long where the part shrinks.</summary>
    const double Tolerance = 0.03;

    /// <summary>How far the lead may always be off, mm: levels in inches are rounded to a thousandth.</summary>
    const double Rounding = 0.013;

    /// <summary>Leads of arcs that differ by less are one helix', mm for each turn: the levels of short arcs are rounded.</summary>
    const double SameLead = 0.1;

    /// <summary>The most starts that a thread is taken to have.</summary>
    const int MostStarts = 4;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5015",
        Name = "thread-mill-pitch",
        Severity = Severity.Warning,
        Title = "A thread mill's helix does not climb by its pitch",
        Finds = "A helix of a thread mill about one centre, a whole turn or more in one arc or several, that rises or falls for each turn by another length than the pitch that the setup gives the tool: off by more than 3 % of it and 0.013 mm. Once for each tool and lead.",
        AtTheMachine = "The teeth above one another do not run in one groove: each cuts into the flank that the one before has left, and no screw fits; a thread by a single row of teeth gets another pitch than meant.",
        Setup = """
            { "tools": [ { "number": 11, "kind": "thread-mill", "diameter": 12, "pitch": 1.5, "length": 105 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X4.5 Y-4.5
            G3 X9 Y0 J4.5 Z-8.625 F240
            I-9 Z-7.625
            ~^^^^^^^^^^
            X4.5 Y4.5 I-4.5 Z-7.25
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X4.5 Y-4.5
            G3 X9 Y0 J4.5 Z-8.625 F240
            I-9 Z-7.125
            X4.5 Y4.5 I-4.5 Z-6.75
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        NotFound = "Thread mills whose pitch or diameter the setup does not give; ways in and out that are less than a turn; level circles. Two, three and four times the pitch are taken for a thread of so many starts.",
        Source = "The lead of a thread is its pitch times its starts (from memory); that the helix of a thread mill climbs by it: common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (!run.Job.Setup.Tools.Any(tool => tool is { Kind: ToolKind.ThreadMill, Pitch: > 0 }))
            return;
        var told = new HashSet<(int Tool, long Lead)>();
        var (chain, last) = (default(Helix), default(RoundCut));
        for (var part = 0; part < run.Results.Length; part++)
        {
            foreach (ref readonly var arc in run.Results[part].Rounds.AsSpan())
            {
                if (arc.Tool.Kind != ToolKind.ThreadMill && chain.Sweep == 0)
                    continue;
                if (chain.Sweep > 0 && !arc.BeginsAnew && arc.Continues(last) && Math.Abs(chain.Lead - new Helix(arc, 0).Lead) <= SameLead)
                    chain = chain.With(arc);
                else
                {
                    Tell(chain, told, file);
                    chain = new Helix(arc, run.LineOf(part, arc.Line));
                }
                last = arc;
            }
        }
        Tell(chain, told, file);
    }

    void Tell(in Helix helix, HashSet<(int Tool, long Lead)> told, in FileContext file)
    {
        if (!(helix.Sweep >= RoundCut.Turn - RoundCut.Rounding) || helix.Tool is not { Kind: ToolKind.ThreadMill, Pitch: > 0 and var pitch } tool)
            return;
        var lead = Math.Abs(helix.Lead);
        if (lead < RoundCut.Same || IsLeadOf(lead, pitch) || !told.Add((tool.Number, (long)Math.Round(lead / RoundCut.Same))))
            return;
        var say = file.SayAt(helix.Line, null);
        file.ReportBlock(this, helix.Line, $"This helix of T{tool.Number} {(helix.Rise > 0 ? "rises" : "falls")} by {say.Length(Math.Round(lead, 4))} for each turn, and the pitch of the tool is {say.Length(pitch)}: its teeth do not run in one groove.");
    }

    static bool IsLeadOf(double lead, double pitch)
    {
        for (var starts = 1; starts <= MostStarts; starts++)
            if (Math.Abs(lead - starts * pitch) <= Math.Max(Rounding, Tolerance * starts * pitch))
                return true;
        return false;
    }

    /// <summary>Arcs about one centre, one after the other, that climb alike.</summary>
    /// <param name="Rise">How much higher the last ends than the first begins, mm.</param>
    /// <param name="Sweep">Of all together, radians.</param>
    /// <param name="Line">The block of the first, from 0.</param>
    readonly record struct Helix(Tool Tool, double Rise, double Sweep, int Line)
    {
        public Helix(in RoundCut arc, int line)
            : this(arc.Tool, arc.To.Z - arc.From.Z, arc.Sweep, line)
        {
        }

        /// <summary>Rise for each turn, mm.</summary>
        public double Lead => Rise / Sweep * RoundCut.Turn;

        public Helix With(in RoundCut arc) => this with { Rise = Rise + arc.To.Z - arc.From.Z, Sweep = Sweep + arc.Sweep };
    }
}
