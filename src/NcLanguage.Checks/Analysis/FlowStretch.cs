namespace NcLanguage.Checks.Analysis;

/// <summary>What a stretch of a run that leaves the order of the text brought beside the results of its blocks: with it a later run that comes to the same blocks in the same state need not go
/// through them. Blocks are counted from 0 within the stretch.</summary>
/// <param name="IsOutermost">No call is under way where it begins, and no other way of the run waits.</param>
/// <param name="HangsOnOthers">Something in it hangs on lines that are none of its own.</param>
/// <param name="Findings">What its blocks show, with lines of the whole text.</param>
/// <param name="Passages">Where its calls and returns led.</param>
sealed record FlowStretch(bool IsOutermost, bool HangsOnOthers, (int At, Finding Finding)[] Findings, (int At, Passage Passage)[] Passages)
{
    /// <summary>The same where the lines stand in a new version of the text. All of them must be the same in both.</summary>
    public FlowStretch Moved(LineMap lines) => this with
    {
        Findings = Array.ConvertAll(Findings, told => (told.At, told.Finding with { Line = lines.Same(told.Finding.Line) })),
        Passages = Array.ConvertAll(Passages, led => (led.At, led.Passage with { Line = lines.Same(led.Passage.Line) })),
    };
}
