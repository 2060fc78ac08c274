using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A jump that leads nowhere.</summary>
public sealed class JumpMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6033",
        Name = "jump-missing",
        Severity = Severity.Error,
        Title = "The block to go to is not there",
        Finds = "GOTO, or M99 with P, with a number that no block of the program has; a loop or condition whose beginning or end is missing. A warning of a GOTO to which this run does not come, or whose condition does not hold in it.",
        AtTheMachine = "The control searches the program and stops with an alarm.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            GOTO 90
            ~^^^^^^
            N80 G0 X20
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            GOTO 80
            N80 G0 X20
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the only number of the program that differs from this one in a single digit, where there is just one; numbers of one digit are left alone.",
        NotFound = "Jumps to a number that is not known, and M99 with P to which this run does not come.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is not { } flow)
            return;
        HashSet<int>? told = null;
        foreach (var (line, number) in flow.Text.JumpsAstray())
        {
            told ??= [.. flow.Findings.Where(finding => finding.Rule is JumpMissing).Select(finding => finding.Line)];
            if (told.Contains(line))
                continue;
            foreach (ref readonly var token in file.Run.BlockAt(line).Tokens)
                if (token.Statement == StatementKind.Goto && token.Value == number)
                    file.Report(this, line, token.Start, token.End, $"No block of this program has the number N{Say.Number(number)}: where this jump is taken, the control stops with an alarm.", number, severity: Severity.Warning);
        }
    }

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind == FaultKind.JumpMissing)
                step.Report(this, fault.Token, $"No block of this program has the number N{Say.Number(fault.A)}: the control stops here with an alarm.", value: fault.A);
            else if (fault.Kind == FaultKind.PairMissing)
                step.Report(this, fault.Token, $"{Partner(step, fault)}: the control stops here with an alarm.");
        }
    }

    /// <summary>What is not there, by its name where there is but one that could be.</summary>
    static string Partner(in StepContext step, in Fault fault) => (step.Step.Words.Has('O'), step.Block.Tokens[fault.Token].Statement) switch
    {
        (false, StatementKind.While or StatementKind.Do) => $"This loop has no END{Say.Number(fault.A)}",
        (false, StatementKind.End) => $"No loop with DO{Say.Number(fault.A)} begins before this end",
        _ => $"The statement that goes with this one by its number {Say.Number(fault.A)} is not there",
    };

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        if (analysis.Main.Flow is not { } flow || !(finding.Value >= 0) || Meant(flow.Text, finding) is not { } number)
            return [];
        foreach (ref readonly var token in analysis.Main.BlockAt(finding.Line).Tokens)
            if ((token.Statement == StatementKind.Goto || token.IsWord('P')) && !token.IsExpression && token.Value == finding.Value)
                return [new Fix($"Go to N{number}", FixSafety.Choice, [new Edit(finding.Line, token.ValueStart, token.End, number)])];
        return [];
    }

    /// <summary>The one number of the program that differs in a single digit; null where there is none or more than one.</summary>
    static string? Meant(FlowText text, Finding finding)
    {
        var written = Say.Number(finding.Value);
        string? meant = null;
        foreach (var mark in text.NumbersAround(finding.Line))
        {
            var number = Say.Number(mark.Number);
            if (number == meant || !DiffersInOneDigit(written, number))
                continue;
            if (meant is not null)
                return null;
            meant = number;
        }
        return meant;
    }

    static bool DiffersInOneDigit(string a, string b)
    {
        // Of numbers with one digit each differs from every other.
        if (a.Length != b.Length || a.Length < 2)
            return false;
        var different = 0;
        for (var i = 0; i < a.Length; i++)
            different += a[i] == b[i] ? 0 : 1;
        return different == 1;
    }
}
