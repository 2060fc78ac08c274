namespace NcLanguage.Checks.Analysis;

/// <summary>The arcs of a run that seem to turn the wrong way or to have a wrong radius, those of contours that go on from part to part among them: where a part ends has no meaning.</summary>
static class TurnedArcs
{
    /// <summary>Each with the line of its block.</summary>
    public static IEnumerable<(int Line, TurnedArc Arc)> Of(ProgramRun run)
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
