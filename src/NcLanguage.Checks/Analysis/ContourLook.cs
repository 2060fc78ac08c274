namespace NcLanguage.Checks.Analysis;

/// <summary>What was seen of a contour under radius compensation: it holds for as long as the parts that it goes through are the same.</summary>
/// <param name="At">The block with G41 or G42, counted from 0 within the part.</param>
/// <param name="Behind">The parts behind that one which it goes into.</param>
/// <param name="Message">What is told of it; null where nothing is.</param>
sealed record ContourLook(int At, PartResult[] Behind, string? Message)
{
    /// <summary>Whether it holds for the contour that begins in a part of a run.</summary>
    public bool HoldsAt(ProgramRun run, int part)
    {
        if (part + 1 + Behind.Length > run.Results.Length)
            return false;
        for (var i = 0; i < Behind.Length; i++)
            if (!ReferenceEquals(run.Results[part + 1 + i], Behind[i]))
                return false;
        return true;
    }
}
