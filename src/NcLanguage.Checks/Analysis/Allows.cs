namespace NcLanguage.Checks.Analysis;

/// <summary>Silences findings that a comment (nc-allow NAME: reason) in the same block or the block above names, and reports
/// comments that give no reason or silence nothing.</summary>
static class Allows
{
    public static void Apply(ProgramRun run, List<Finding> findings)
    {
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
        {
            if (!run.Texts[chunk].HasAllow)
                continue;
            var blocks = run.Text.Chunks[chunk].Blocks;
            for (var line = 0; line < blocks.Count; line++)
                foreach (var allow in AllowComments.In(blocks[line]))
                    Apply(allow, run.Text.FirstLineOf(chunk) + line, findings);
        }
    }

    static void Apply(AllowComment allow, int line, List<Finding> findings)
    {
        if (allow.Reason.Length == 0)
        {
            findings.Add(Report(Rules.AllowWithoutReason.Instance, line, allow, allow.Name.Length == 0
                ? "This comment silences nothing: write (nc-allow NAME: reason)."
                : $"No reason is given for silencing {allow.Name}, so it is not silenced: write (nc-allow {allow.Name}: reason)."));
            return;
        }
        var silenced = findings.RemoveAll(finding =>
            (finding.Line == line || finding.Line == line + 1)
            && (string.Equals(finding.Name, allow.Name, StringComparison.Ordinal) || string.Equals(finding.Id, allow.Name, StringComparison.OrdinalIgnoreCase)));
        if (silenced > 0)
            return;
        findings.Add(Report(Rules.AllowIdle.Instance, line, allow, RuleList.Find(allow.Name) is null
            ? $"There is no finding named {allow.Name}: this comment silences nothing."
            : $"There is no {allow.Name} here or in the next block: this comment silences nothing."));
    }

    static Finding Report(Rule rule, int line, AllowComment allow, string message) => new()
    {
        Rule = rule,
        Severity = rule.Info.Severity,
        Line = line,
        StartColumn = allow.StartColumn,
        EndColumn = allow.EndColumn,
        Message = message,
    };
}
