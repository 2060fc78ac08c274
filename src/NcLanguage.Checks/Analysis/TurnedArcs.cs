namespace NcLanguage.Checks.Analysis;

/// <summary>The arcs of a run that seem to turn the wrong way or to have a wrong radius, those of contours that go on from part to part among them: where a part ends has no meaning.</summary>
static class TurnedArcs
{
    /// <summary>Each with the line of its block.</summary>
    public static (int Line, TurnedArc Arc)[] Of(ProgramRun run)
    {
        // Most programs have none, and each of their parts remembers it: behind a key they need not be put together.
        var (mayBe, before) = (false, (PartResult?)null);
        foreach (var part in run.Results)
        {
            mayBe |= part.MayTurnWrong(before);
            before = part;
        }
        return mayBe ? [.. Gather(run)] : [];
    }

    /// <summary>Whether a part, and where it goes on from the one before it, may hold such an arc; false where that is certain not to be so.</summary>
    public static bool MayBeIn(PartResult part, PartResult? before)
    {
        if (part.TurnedArcs.Length > 0)
            return true;
        // A part that moves nothing: what stands behind it goes on from before it.
        if (part.Contours is not { } ends || (before is not null && before.Contours is null))
            return true;
        if (ends.Head?.Joints is { HasCorner: true } || ends.Tail?.Joints is { HasCorner: true })
            return true;
        var open = before?.Contours is { } above ? above.IsEnded ? above.Tail : above.Head : null;
        if (open is null || ends.Head is not { } head || !open.Last.EndsAt(head.First.From))
            return false;
        // A single arc of a part hangs on more than the part behind it.
        if (open.Last.IsArc && !open.Before.IsThere)
            return true;
        var joints = new ContourJoints();
        return (open.Last.IsArc && joints.Look(open.Before, open.Last, head.First, part: 0) is not null)
            || (head.First.IsArc && head.Second.IsThere && joints.Look(open.Last, head.First, head.Second, part: 0) is not null)
            || joints.HasCorner;
    }

    static IEnumerable<(int Line, TurnedArc Arc)> Gather(ProgramRun run)
    {
        var joints = new ContourJoints();
        var (before, last, lastPart) = (default(ContourMove), default(ContourMove), 0);
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            foreach (var arc in result.TurnedArcs)
                yield return (run.LineOf(part, arc.Line), arc);
            if (result.Contours is not { } ends)
                continue;
            if (ends.Head is { } head)
            {
                if (last.IsThere && last.EndsAt(head.First.From))
                {
                    if (last.IsArc && before.IsThere && joints.Look(before, last, head.First, lastPart) is { } first)
                        yield return (run.LineOf(lastPart, first.Line), first);
                    if (head.First.IsArc && head.Second.IsThere && joints.Look(last, head.First, head.Second, part) is { } second)
                        yield return (run.LineOf(part, second.Line), second);
                    joints.Add(head.Joints, part);
                    before = head.Before.IsThere ? head.Before : last;
                }
                else
                {
                    if (Ended(run, joints) is { } odd)
                        yield return odd;
                    joints.Add(head.Joints, part);
                    before = head.Before;
                }
                (last, lastPart) = (head.Last, part);
            }
            if (!ends.IsEnded)
                continue;
            if (Ended(run, joints) is { } ended)
                yield return ended;
            (before, last, lastPart) = ends.Tail is { } tail ? (tail.Before, tail.Last, part) : (default, default, 0);
            if (ends.Tail is { } open)
                joints.Add(open.Joints, part);
        }
        if (Ended(run, joints) is { } atEnd)
            yield return atEnd;
    }

    static (int Line, TurnedArc Arc)? Ended(ProgramRun run, ContourJoints joints)
    {
        var odd = joints.Judge();
        joints.Clear();
        return odd is { } corner ? (run.LineOf(corner.Part, corner.Arc.Line), corner.Arc) : null;
    }
}
