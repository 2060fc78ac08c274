using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A helix of a thread mill that does not climb by the pitch of its teeth.</summary>
public sealed class ThreadMillPitch : Rule
{
    /// <summary>Arcs that are looked at as one helix: more than a thread has.</summary>
    const int MostArcs = 1000;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5015",
        Name = "thread-mill-pitch",
        Severity = Severity.Warning,
        Title = "A thread mill's helix does not climb by its pitch",
        Finds = "A helix of a thread mill about one centre, a whole turn or more in one arc or several, that rises or falls for each turn by another length than the pitch that the setup gives the tool: off by more than 3 % of it and 0.013 mm; and an arc that leaves such a helix of the right lead: once, where more than one follows from it. Once for each tool and lead.",
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
        NotFound = "Thread mills whose pitch or diameter the setup does not give; ways in and out, also about the same centre, where a whole turn lies between them; level circles; helices less than half of which climb as they should. Two, three and four times the pitch are taken for a thread of so many starts.",
        Source = "The lead of a thread is its pitch times its starts (from memory); that the helix of a thread mill climbs by it: common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (!run.Job.Setup.Tools.Any(tool => tool is { Kind: ToolKind.ThreadMill, Pitch: > 0 }))
            return;
        var told = new HashSet<(int Tool, long Lead)>();
        var helix = new ThreadHelix();
        for (var part = 0; part < run.Results.Length; part++)
        {
            foreach (ref readonly var arc in run.Results[part].Rounds.AsSpan())
            {
                if (!helix.GoesOnWith(arc) || helix.Count == MostArcs)
                {
                    Tell(helix, told, file);
                    helix.Clear();
                }
                if (arc.Tool is { Kind: ToolKind.ThreadMill, Pitch: > 0 })
                    helix.Add(arc, run.LineOf(part, arc.Line));
            }
        }
        Tell(helix, told, file);
    }

    void Tell(ThreadHelix helix, HashSet<(int Tool, long Lead)> told, in FileContext file)
    {
        if (helix.FirstAstray() is { } astray)
        {
            if (told.Add(KeyOf(astray.Of)))
                Tell(astray, file);
            return;
        }
        foreach (var turn in helix.WholeTurns())
            if (turn.IsOffPitch && told.Add(KeyOf(turn)))
                Tell(turn, file);
    }

    static (int Tool, long Lead) KeyOf(in HelixPiece piece) => (piece.Tool.Number, (long)Math.Round(Math.Abs(piece.Lead) / RoundCut.Same));

    void Tell(in HelixPiece turn, in FileContext file)
    {
        var say = file.SayAt(turn.Line, null);
        file.ReportBlock(this, turn.Line, $"This helix of T{turn.Tool.Number} {Way(turn)} by {say.Length(Math.Round(Math.Abs(turn.Lead), 4))} for each turn, and the pitch of the tool is {say.Length(turn.Pitch)}: its teeth do not run in one groove.");
    }

    void Tell(in AstrayPiece astray, in FileContext file)
    {
        var (piece, say) = (astray.Of, file.SayAt(astray.Of.Line, null));
        var goes = Math.Abs(piece.Rise) < RoundCut.Same ? "stays level" : $"{Way(piece)} by {say.Length(Math.Abs(piece.Rise))}";
        file.ReportBlock(
            this, piece.Line,
            $"This arc of T{piece.Tool.Number} {goes}, where the helix that it is a part of {(astray.Wanted > 0 ? "rises" : "falls")} by {say.Length(Math.Abs(astray.Wanted))} over {Say.Number(piece.Sweep * 360 / RoundCut.Turn, 1)}°: the pitch of the tool is {say.Length(piece.Pitch)}, and its teeth leave the groove.");
    }

    static string Way(in HelixPiece piece) => piece.Rise > 0 ? "rises" : "falls";
}
