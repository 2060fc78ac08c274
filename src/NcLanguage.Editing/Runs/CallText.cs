using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>Where a call or a return leads, how many times, and what is done there.</summary>
static class CallText
{
    /// <summary>A paragraph for a block that calls a program or subroutine; empty where it does not.</summary>
    public static string OfCall(ProgramAnalysis analysis, int line, Step step)
    {
        var transfer = step.Transfer;
        var isCall = transfer.Kind is TransferKind.CallProgram or TransferKind.CallWithArguments || transfer.Statement == StatementKind.Call;
        if (!isCall || analysis.Main.Flow is not { } flow)
            return "";
        if (double.IsNaN(transfer.Number))
            return "Which program it runs is not known here.";
        if (RunsText.NotReached(analysis, line) is { Length: > 0 } notReached)
            return notReached;
        if (transfer is { Value: 0, Kind: not TransferKind.Structure })
            return "Nought times: it is passed over.";
        if (!flow.Passages.TryGetValue(line, out var passage))
            return analysis.Main.Job.Programs?.WhyNotRead((int)Math.Round(transfer.Number)) is { } why
                ? $"Program {Say.Number(transfer.Number)} is not in this file, and beside it {Markdown.Plain(why)}: what it does is not known."
                : $"There is no program {Say.Number(transfer.Number)} in this file, nor a file of that number beside it.";
        var (number, times) = NumberAndTimes(analysis, transfer, passage);
        var what = transfer.Statement == StatementKind.Call ? "subroutine" : "program";
        var text = passage.File is { } file
            ? $"Runs {what} {number} in {Markdown.Plain(file)}, {Times(times)}."
            : $"Runs {what} {number}, from line {passage.Line + 1} on, {Times(times)}.";
        if (flow.RunsOf(line) > 1)
            text += $" This block itself runs {RunsText.Number(flow.RunsOf(line))} times.";
        return text + (passage.File is null ? "" : DoneThere(analysis, line));
    }

    /// <summary>A paragraph for a block that ends a called program or subroutine; empty where it does not.</summary>
    public static string OfReturn(ProgramAnalysis analysis, int line, Step step)
    {
        var transfer = step.Transfer;
        var isReturn = transfer.Kind == TransferKind.Return || transfer.Statement is StatementKind.EndSub or StatementKind.Return;
        if (!isReturn || analysis.Main.Flow is not { } flow)
            return "";
        if (RunsText.NotReached(analysis, line) is { Length: > 0 } notReached)
            return notReached;
        if (flow.Passages.TryGetValue(line, out var passage))
        {
            // A call with times left begins the program again: not every run of this block goes back.
            var goes = flow.RunsOf(line) > 1 ? $"Of its {RunsText.Number(flow.RunsOf(line))} runs the first that goes back leads to" : "Goes back to";
            return passage.File is { } file
                ? $"{goes} {Markdown.Plain(file)}, line {passage.Line + 1}."
                : $"{goes} line {passage.Line + 1}.";
        }
        if (transfer.Kind == TransferKind.Return && transfer.Value != 0)
            return Target(flow, line, transfer.Number);
        // Behind the call there is nothing more, or nothing has called it.
        return transfer.Kind == TransferKind.Return ? "Nothing runs behind it: it ends the program here." : "";
    }

    /// <summary>Where a jump to a block number leads.</summary>
    public static string Target(FlowRun flow, int line, double number)
    {
        if (double.IsNaN(number))
            return $"Where it leads is {Lengths.NotKnown}.";
        var target = flow.Text.TargetOf(line, number);
        return target < 0
            ? $"No block of this program has the number N{Say.Number(number)}."
            : $"Leads {(target <= line ? "back " : "")}to line {target + 1}, N{Say.Number(number)}.";
    }

    /// <summary>P with more than four digits may be how many times and then the program's four digits.</summary>
    static (string Number, double Times) NumberAndTimes(ProgramAnalysis analysis, in Transfer transfer, Passage passage)
    {
        if (transfer is { Kind: not TransferKind.Structure, Number: > 9999 } && passage.File is null && NumberOf(analysis.Main.BlockAt(passage.Line)) is var called
            && called == transfer.Number % 10000)
            return (Say.Number(called), Math.Floor(transfer.Number / 10000));
        return (Say.Number(transfer.Number), transfer.Kind == TransferKind.Structure ? 1 : transfer.Value);
    }

    static double NumberOf(in Block block) => block.ProgramNumberIndex is >= 0 and var number ? block.Tokens[number].Value : double.NaN;

    static string Times(double times) => double.IsNaN(times) ? "how many times is not known" : times == 1 ? "once" : $"{Say.Number(times)} times one after the other";

    static string DoneThere(ProgramAnalysis analysis, int line)
    {
        var (holes, seconds, isUntimed) = (0, 0.0, false);
        foreach (var part in analysis.Main.Results)
        {
            if (!part.IsElsewhere)
                continue;
            foreach (var hole in part.Holes)
                holes += part.Lines![hole.Line] == line ? 1 : 0;
            for (var at = 0; at < part.StepSeconds.Length; at++)
                seconds += part.Lines![at] == line ? part.StepSeconds[at] : 0;
            foreach (var at in part.UntimedSteps)
                isUntimed |= part.Lines![at] == line;
        }
        return $" In all {(holes > 0 ? Say.Count(holes, "hole") + " and " : "")}{(isUntimed ? "at least " : "")}{Say.Seconds(seconds)} there.";
    }
}
