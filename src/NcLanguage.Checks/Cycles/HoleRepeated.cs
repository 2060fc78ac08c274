using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Rules;

/// <summary>The same hole is drilled twice by the same cycle and tool.</summary>
public sealed class HoleRepeated : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3025",
        Name = "hole-repeated",
        Severity = Severity.Warning,
        Title = "The same hole is drilled twice",
        Finds = "A place that the same cycle and tool drill a second time to the same depth within one uninterrupted run of holes; repeats that do not step on included. And a later run that drills or taps places of an earlier one again, with the same cycle and tool and no deeper: told once, with the number of places.",
        AtTheMachine = "The tool goes into the finished hole again: time is lost, a drill may chatter, a tap or a reamer may spoil the hole. Often another place was meant.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            X12
            ~^^
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            X60
            """),
        NotFound = "A hole drilled deeper the second time, and one that another cycle or tool works on: spotted, drilled, tapped; of a later run also bored holes, and whatever comes behind another tool or a stop (M0, M1, M60) or stands in a block with /. Holes behind the "
            + "first 5000 places of one run are compared with those only; runs of programs with more than 20,000 holes not at all.",
        Source = "NISTIR 6556 §3.5.16: in absolute mode repeats act in place. That it is not meant is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        // What runs for ever drills all of it again: loop-endless.
        if (file.Run.Flow is { End: FlowEnd.Endless })
            return;
        var search = new RepeatSearch();
        RunOfHoles? before = null;
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            if (result.Holes.Length == 0)
                continue;
            if (result.Repeats is not { } known || !ReferenceEquals(known.Before, before))
                result.Repeats = known = Look(file, part, search.Look(result, before));
            foreach (var repeat in known.Items)
                if (repeat.Finding is { } finding)
                    file.Add(Placed(finding, repeat, file.Run, part));
            before = known.After;
        }
        if (file.HasFewHoles && RunRepeats.MayBeIn(file.Run))
            foreach (var repeat in RunRepeats.Of(file.Run, file.Places))
                Tell(file, repeat);
    }

    void Tell(in FileContext file, RunRepeat repeat)
    {
        var (work, others) = (repeat.Works[0], repeat.Works.Count - 1);
        var say = file.SayAt(work.Line, work.Coordinates);
        var hole = HoleTable.Of(file.Run).ResultAt(work.Number - 1).Hole;
        var own = StepContext.WordsOf(file.Run.BlockAt(work.Line));
        var related = repeat.Earlier.Line == work.Line ? null : RelatedTo(file.Run, repeat.Earlier.Line);
        file.Report(this, work.Line, own.Start, own.End,
            $"G{work.Cycle} {WorkOf(work.Cycle)} {say.Place(hole.X, hole.Y)}{(others == 0 ? "" : $" and {Say.Count(others, "more place")}")} to {say.Level(hole.Bottom)} a second time, "
            + $"after {work.ToolName} has been there in an earlier run, as deep or deeper: another tool or place may be meant.",
            related: related);
    }

    static RelatedPlace RelatedTo(ProgramRun run, int line)
    {
        var (start, end) = StepContext.WordsOf(run.BlockAt(line));
        return new RelatedPlace(line, start, end, "The first time was here.");
    }

    PartRepeats Look(in FileContext file, int part, PartRepeats repeats)
    {
        // A run that leaves the part as it did before is the same run: what follows it holds.
        if (file.Run.Results[part].Repeats is { } known && known.After.IsSameAs(repeats.After))
            repeats = repeats with { After = known.After };
        foreach (ref var repeat in repeats.Items.AsSpan())
            repeat = repeat with { Finding = Tell(file, part, repeat) };
        return repeats;
    }

    static Finding Placed(Finding finding, in HoleRepeat repeat, ProgramRun run, int part)
    {
        var line = run.LineOf(part, repeat.Line);
        if (finding.Related is not { } related)
            return finding with { Line = line };
        return finding with { Line = line, Related = related with { Line = run.LineOf(run.PartOf(repeat.EarlierPart, part), repeat.EarlierLine) } };
    }

    /// <summary>What is told of a repeat, wherever its lines stand; null for a block that is refused.</summary>
    Finding? Tell(in FileContext file, int part, in HoleRepeat repeat)
    {
        var run = file.Run;
        var line = run.LineOf(part, repeat.Line);
        var earlier = run.LineOf(run.PartOf(repeat.EarlierPart, part), repeat.EarlierLine);
        // A block of the cycle without a place is refused: cycle-word-missing.
        var block = run.BlockAt(line);
        if (block.IndexOf('X') < 0 && block.IndexOf('Y') < 0 && block.IndexOf('Z') < 0)
            return null;
        var hole = run.Results[part].Holes[repeat.Hole].Hole;
        var say = file.SayAt(line, run.Results[part].CoordinatesAt(repeat.Line));
        var what = $"G{hole.Cycle} {WorkOf(hole.Cycle)} {say.Place(hole.X, hole.Y)} to {say.Level(hole.Bottom)}";
        var own = StepContext.WordsOf(block);
        var finding = new Finding { Rule = this, Severity = Info.Severity, Line = line, StartColumn = own.Start, EndColumn = own.End, Message = what + " a second time.", Value = double.NaN };
        // A block that comes back to a place at a later run of its own repeats nothing by a word.
        if (ReferenceEquals(repeat.EarlierPart, run.Results[part]) && repeat.EarlierLine == repeat.Line)
            return finding with { Message = what + " more than once: repeats step on only under G91." };
        if (earlier == line)
            return finding;
        return finding with { Related = RelatedTo(run, earlier) };
    }

    /// <summary>What a cycle does to a hole, as its name says.</summary>
    static string WorkOf(int cycle) => cycle switch
    {
        74 or 84 => "taps",
        76 or >= 85 => "bores",
        _ => "drills",
    };
}
