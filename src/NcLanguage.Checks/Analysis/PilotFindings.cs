using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>A long drill goes into its pilot hole slowly turning, and at a feed that no cut bears, and gets its speed there: it cuts nothing on the way. What is told of such a speed or feed is taken out.</summary>
static class PilotFindings
{
    /// <summary>Places and levels that differ by less are one, mm.</summary>
    const double Same = 0.01;

    /// <summary>Holes before a feed that are looked through for its pilot.</summary>
    const int MostHoles = 5000;

    /// <summary>Findings that are looked at: more are told as they are.</summary>
    const int MostFindings = 500;

    public static void TakeOut(ProgramRun run, List<Finding> findings)
    {
        // In the order of the text alone it is plain what lies between two blocks.
        if (run.Flow is not null)
            return;
        var left = MostFindings;
        findings.RemoveAll(finding => !finding.IsElsewhere && !finding.IsOfOtherSkip && (IsSlow(finding) || IsFast(finding)) && left-- > 0 && IsOnTheWay(run, finding));
    }

    static bool IsSlow(Finding finding) => finding.Rule is CuttingSpeedRule && finding.Value < 0;

    static bool IsFast(Finding finding) => finding.Rule is FeedPerTooth && finding.Value > 0;

    static bool IsOnTheWay(ProgramRun run, Finding finding)
    {
        var isSlow = IsSlow(finding);
        var line = finding.Line;
        if (run.Job.Setup.FindTool(run.StepAt(line).After.Tool) is not { Kind: ToolKind.Drill } drill)
            return false;
        if (!isSlow && HolesIn(run, line, line + 1) == 0 && PlungesIn(run, drill, line, line + 1) is { Count: > 0 } fed)
            return fed.TrueForAll(plunge => IsInHole(run, drill, plunge));
        var (next, change) = (run.FirstSetter(isSlow ? Slot.Speed : Slot.Feed, line), run.FirstSetter(Slot.Tool, line));
        var end = change < 0 ? run.Text.LineCount : change;
        var isLeft = next > line && next < end;
        // Behind its holes it is slowed down for the way out.
        if ((!isLeft || !isSlow) && !HasDrilled(run, drill, line))
            return false;
        end = isLeft ? next : end;
        return HolesIn(run, line, end) == 0 && PlungesIn(run, drill, line, end).TrueForAll(plunge => IsInHole(run, drill, plunge));
    }

    /// <summary>Whether a drill has made a hole before a line, by a cycle or by a feed straight down since it was called.</summary>
    static bool HasDrilled(ProgramRun run, Tool drill, int line)
    {
        var holes = HoleTable.Of(run);
        if (holes.At(line).First is > 0 and var first && holes.ResultAt(first - 1).Hole.Tool == drill.Number)
            return true;
        var called = run.LastSetter(Slot.Tool, line);
        return called >= 0 && PlungesIn(run, drill, called, line).Count > 0;
    }

    static int HolesIn(ProgramRun run, int from, int end) =>
        (end < run.Text.LineCount ? HoleTable.Of(run).At(end).First : HoleTable.Of(run).Count) - HoleTable.Of(run).At(from).First;

    static List<(Plunge Plunge, int Line)> PlungesIn(ProgramRun run, Tool drill, int from, int end)
    {
        var found = new List<(Plunge Plunge, int Line)>();
        for (var part = run.Text.ChunkOfLine(from); part < run.Results.Length && run.Text.FirstLineOf(part) < end; part++)
            foreach (var plunge in run.Results[part].Plunges)
                if (run.LineOf(part, plunge.Line) is var line && line >= from && line < end && plunge.Tool.Number == drill.Number)
                    found.Add((plunge, line));
        return found;
    }

    /// <summary>Whether a feed straight down keeps within a hole that was drilled before, no narrower than the drill.</summary>
    static bool IsInHole(ProgramRun run, Tool drill, (Plunge Plunge, int Line) fed)
    {
        var holes = HoleTable.Of(run);
        var before = holes.At(fed.Line).First;
        var tip = fed.Plunge.To - fed.Plunge.ToFrame;
        if (Openings.FloorUnder(run.Job.Setup, fed.Plunge.To.X, fed.Plunge.To.Y, drill.Diameter / 2 ?? double.PositiveInfinity, double.PositiveInfinity) <= fed.Plunge.To.Z + Same)
            return true;
        for (var i = before - 1; i >= Math.Max(0, before - MostHoles); i--)
        {
            var result = holes.ResultAt(i);
            var hole = result.Hole;
            if (result.ToFrame == fed.Plunge.ToFrame && Math.Abs(hole.X - tip.X) <= Same && Math.Abs(hole.Y - tip.Y) <= Same && hole.Bottom <= tip.Z + Same
                && run.Job.Setup.FindTool(hole.Tool)?.Diameter >= drill.Diameter - Same)
                return true;
        }
        return false;
    }
}
