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
        NotFound = "Of a program's repeats one by one only the first 500 are told, and with the last of these how many more there are. A hole drilled deeper the second time, and one that another cycle or tool works on: spotted, drilled, tapped; of a later run also bored holes, and whatever comes behind another tool or a stop (M0, M1, M60) or stands in a block with /. Holes behind the "
            + "first 5000 places of one run are compared with those only; runs of programs with more than 20,000 holes not at all.",
        Source = "NISTIR 6556 §3.5.16: in absolute mode repeats act in place. That it is not meant is common practice.",
    };

    /// <summary>Repeats that are told one by one. More nobody reads, and each would cost what it costs to tell with every key.</summary>
    public const int MostTold = 500;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        // What runs for ever drills all of it again: loop-endless.
        if (file.Run.Flow is { End: FlowEnd.Endless })
            return;
        // What one block does at several of its runs is told once, with how many times: there all are told.
        var most = file.Run.Flow is null ? MostTold : int.MaxValue;
        var search = new RepeatSearch();
        RunOfHoles? before = null;
        Finding? last = null;
        var (count, lastLine) = (0, 0);
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            if (result.Holes.Length == 0)
                continue;
            if (result.Repeats is not { } known || !ReferenceEquals(known.Before, before))
                result.Repeats = known = Look(file, part, search.Look(result, before));
            var told = Math.Min(most - Math.Min(count, most), known.Items.Length);
            foreach (ref var repeat in known.Items.AsSpan(0, told))
            {
                if (last is not null)
                    file.Add(last);
                last = Placed(repeat.Finding ??= Tell(file, part, repeat), repeat, file.Run, part);
            }
            if (known.Items is [.., var end])
                lastLine = file.Run.LineOf(part, end.Line);
            count += known.Items.Length;
            before = known.After;
        }
        if (last is not null)
            file.Add(count <= most ? last : last with { Message = $"{last.Message} The same goes for {Say.Count(count - most, "more hole")} behind it, {(count - most == 1 ? "" : "the last ")}in line {lastLine + 1}." });
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

    static PartRepeats Look(in FileContext file, int part, PartRepeats repeats)
    {
        // A run that leaves the part as it did before is the same run: what follows it holds.
        if (file.Run.Results[part].Repeats is { } known && known.After.IsSameAs(repeats.After))
            repeats = repeats with { After = known.After };
        if (repeats.Items.Length == 0)
            return repeats;
        // A block of the cycle without a place is refused: cycle-word-missing.
        var refused = file.Run.Results[part].HolesWithoutPlace ??= LinesWithoutPlace(file.Run, part);
        return refused.Length == 0 ? repeats : repeats with { Items = Array.FindAll(repeats.Items, repeat => !refused.Contains(repeat.Line)) };
    }

    /// <summary>The blocks of a part that drill and have no place, counted from 0 within it. Each is read: asked for once for a part, and only where it repeats something.</summary>
    static int[] LinesWithoutPlace(ProgramRun run, int part)
    {
        var lines = new List<int>(0);
        var (holes, last) = (run.Results[part].Holes, -1);
        for (var i = 0; i < holes.Length; i++)
        {
            if (holes.LineOf(i) == last)
                continue;
            last = holes.LineOf(i);
            var block = run.BlockAt(run.LineOf(part, last));
            if (block.IndexOf('X') < 0 && block.IndexOf('Y') < 0 && block.IndexOf('Z') < 0)
                lines.Add(last);
        }
        return [.. lines];
    }

    static Finding Placed(Finding finding, in HoleRepeat repeat, ProgramRun run, int part)
    {
        var line = run.LineOf(part, repeat.Line);
        if (finding.Related is not { } related)
            return finding with { Line = line };
        return finding with { Line = line, Related = related with { Line = run.LineOf(run.PartOf(repeat.EarlierPart, part), repeat.EarlierLine) } };
    }

    /// <summary>What is told of a repeat, wherever its lines stand.</summary>
    Finding Tell(in FileContext file, int part, in HoleRepeat repeat)
    {
        var run = file.Run;
        var line = run.LineOf(part, repeat.Line);
        var earlier = run.LineOf(run.PartOf(repeat.EarlierPart, part), repeat.EarlierLine);
        var hole = run.Results[part].Holes[repeat.Hole].Hole;
        var say = file.SayAt(line, run.Results[part].CoordinatesAt(repeat.Line));
        var what = $"G{hole.Cycle} {WorkOf(hole.Cycle)} {say.Place(hole.X, hole.Y)} to {say.Level(hole.Bottom)}";
        var own = StepContext.WordsOf(run.BlockAt(line));
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
