namespace NcLanguage.Checks.Analysis;

/// <summary>Silences findings that a comment (nc-allow NAME: reason) in the same block or the block above names, and reports
/// comments that give no reason or silence nothing.</summary>
static class Allows
{
    public static void Apply(ProgramRun run, List<Finding> findings)
    {
        if (!run.TextFacts.All.HasAllow)
            return;
        FindingsByLine? byLine = null;
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
        {
            if (!run.TextFacts[chunk].HasAllow)
                continue;
            var blocks = run.Text.Chunks[chunk].Blocks;
            for (var line = 0; line < blocks.Count; line++)
                foreach (var allow in AllowComments.In(blocks[line]))
                    Apply(allow, run.Text.FirstLineOf(chunk) + line, byLine ??= new FindingsByLine(findings));
        }
        byLine?.DropSilenced();
    }

    static void Apply(AllowComment allow, int line, FindingsByLine findings)
    {
        if (allow.Reason.Length == 0)
        {
            findings.Add(Report(Rules.AllowWithoutReason.Instance, line, allow, allow.Name.Length == 0
                ? "This comment silences nothing: write (nc-allow NAME: reason)."
                : $"No reason is given for silencing {allow.Name}, so it is not silenced: write (nc-allow {allow.Name}: reason)."));
            return;
        }
        // Both are asked, whatever the first says.
        if (findings.Silence(line, allow.Name) | findings.Silence(line + 1, allow.Name))
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

    /// <summary>The findings of a program, looked up by their line: each comment looks at those of two lines, however many there are.</summary>
    sealed class FindingsByLine
    {
        readonly List<Finding> _findings;
        readonly Dictionary<int, List<int>> _at = [];
        readonly HashSet<int> _silenced = [];

        public FindingsByLine(List<Finding> findings)
        {
            _findings = findings;
            for (var i = 0; i < findings.Count; i++)
                Note(i);
        }

        public void Add(Finding finding)
        {
            _findings.Add(finding);
            Note(_findings.Count - 1);
        }

        /// <summary>Silences the findings with a name or number on a line; false where there are none.</summary>
        public bool Silence(int line, string name)
        {
            var any = false;
            if (_at.TryGetValue(line, out var here))
                foreach (var i in here)
                    any |= (string.Equals(_findings[i].Name, name, StringComparison.Ordinal) || string.Equals(_findings[i].Id, name, StringComparison.OrdinalIgnoreCase))
                        && _silenced.Add(i);
            return any;
        }

        public void DropSilenced()
        {
            var kept = 0;
            for (var i = 0; i < _findings.Count; i++)
                if (!_silenced.Contains(i))
                    _findings[kept++] = _findings[i];
            _findings.RemoveRange(kept, _findings.Count - kept);
        }

        void Note(int index)
        {
            if (!_at.TryGetValue(_findings[index].Line, out var here))
                _at.Add(_findings[index].Line, here = []);
            here.Add(index);
        }
    }
}
