using NcLanguage.Checks;

namespace NcLanguage.Reports.Findings;

/// <summary>Tells a check while it goes on, so that nothing of a file has to be kept once it was told.</summary>
public interface ICheckWriter
{
    /// <summary>Tells one file; they come in the order of their names, programs before setup and machine files.</summary>
    void Write(ReportedFile file);

    /// <summary>Tells the whole. Called once, after the last file; also where the check was stopped, so that what was written is complete in its form.</summary>
    void End(CheckTotals totals);
}

/// <summary>What a check has found so far.</summary>
public sealed class CheckTotals
{
    readonly Dictionary<string, int> _notChecked = [];
    readonly int[] _bySeverity = new int[Enum.GetValues<Severity>().Length];

    public int Programs { get; private set; }

    public long Blocks { get; private set; }

    public int Errors => _bySeverity[(int)Severity.Error];

    public int Warnings => _bySeverity[(int)Severity.Warning];

    public int Notes => _bySeverity[(int)Severity.Note];

    /// <summary>Findings with a fix that is certain.</summary>
    public int Mendable { get; private set; }

    /// <summary>What could not be checked, one clause each, and in how many programs.</summary>
    public IReadOnlyCollection<KeyValuePair<string, int>> NotChecked => _notChecked;

    public List<UnreadFile> NotRead { get; } = [];

    /// <summary>Programs that were not looked at because the check was stopped; null where it came to its end.</summary>
    public int? LeftOut { get; set; }

    /// <summary>Whether anything was found that is at least so severe.</summary>
    public bool Has(Severity least) => _bySeverity.AsSpan(0, (int)least + 1).ContainsAnyExcept(0);

    public void Add(ReportedFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (file.Blocks is { } blocks)
        {
            Programs++;
            Blocks += blocks;
        }
        foreach (var finding in file.Findings)
        {
            _bySeverity[(int)finding.Severity]++;
            if (finding.Fixes.Any(fix => fix.Safety == FixSafety.Safe))
                Mendable++;
        }
        foreach (var clause in file.NotChecked)
            _notChecked[clause] = _notChecked.GetValueOrDefault(clause) + 1;
    }
}
