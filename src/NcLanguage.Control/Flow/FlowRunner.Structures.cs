using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

// Loops and conditions that pair statements by a number.
public sealed partial class FlowRunner
{
    void FollowStructure(CallFrame frame, in Transfer transfer)
    {
        if (double.IsNaN(transfer.Number))
        {
            LoseWay(frame, transfer.Token);
            return;
        }
        var number = (int)Math.Round(transfer.Number);
        switch (transfer.Statement)
        {
            case StatementKind.While when transfer.BehindO && frame.Text.DoClosedBy(Line, number) >= 0:
                CloseDo(frame, transfer, number);
                return;
            case StatementKind.While:
                OpenLoop(frame, transfer, number, transfer.BehindO ? StatementKind.EndWhile : StatementKind.End);
                return;
            case StatementKind.Do when transfer.BehindO:
                GoOn(frame, Line + 1);
                return;
            case StatementKind.Do:
                OpenLoop(frame, transfer, number, StatementKind.End);
                return;
            case StatementKind.End:
                CloseLoop(frame, transfer, number, StatementKind.Do);
                return;
            case StatementKind.EndWhile:
                CloseLoop(frame, transfer, number, StatementKind.While);
                return;
            case StatementKind.Repeat:
                OpenRepeat(frame, transfer, number);
                return;
            case StatementKind.EndRepeat:
                CloseRepeat(frame, transfer, number);
                return;
            case StatementKind.Break:
                GoToEnd(frame, transfer, number, behind: 1);
                return;
            case StatementKind.Continue:
                GoToEnd(frame, transfer, number, behind: 0);
                return;
            case StatementKind.If or StatementKind.ElseIf or StatementKind.Else or StatementKind.EndIf:
                FollowCondition(frame, transfer, number);
                return;
            case StatementKind.Sub:
                GoBehind(frame, transfer, number, frame.Text.PairOf(Line, StatementKind.EndSub, number, true));
                return;
            case StatementKind.Call:
                Call(frame, transfer);
                return;
            case StatementKind.EndSub or StatementKind.Return when _frames.Count > 1:
                Return(frame, transfer);
                return;
            default:
                GoOn(frame, Line + 1);
                return;
        }
    }

    void GoBehind(CallFrame frame, in Transfer transfer, int number, int line)
    {
        if (line >= 0)
            GoOn(frame, line + 1);
        else
            StopAtMissingPair(transfer, number);
    }

    void StopAtMissingPair(in Transfer transfer, int number)
    {
        Fault(FaultKind.PairMissing, transfer.Token, number);
        StopWay(FlowEnd.Stopped);
    }

    void OpenLoop(CallFrame frame, in Transfer transfer, int number, StatementKind end)
    {
        var last = frame.Text.PairOf(Line, end, number, transfer.BehindO);
        if (last < 0)
        {
            StopAtMissingPair(transfer, number);
            return;
        }
        if (!double.IsNaN(transfer.Value))
        {
            frame.UncertainLoops.Remove(Line);
            GoOn(frame, transfer.Value != 0 ? Line + 1 : last + 1);
            return;
        }
        frame.UncertainLoops.Add(Line);
        EnterUncertain(frame, transfer, last);
    }

    /// <summary>The body of a loop whose condition is not known runs once, with nothing known: it may have run any number of times before. Behind the loop only
    /// what holds without it as well is known, for it may not run at all.</summary>
    void EnterUncertain(CallFrame frame, in Transfer transfer, int last)
    {
        Doubt(transfer.Token);
        frame.Wait(new Place(frame.Text.NextBlock(last + 1), false), _state);
        LoseState();
        GoOn(frame, Line + 1);
    }

    void CloseLoop(CallFrame frame, in Transfer transfer, int number, StatementKind begin)
    {
        var first = frame.Text.PairBefore(Line, begin, number, transfer.BehindO);
        if (first < 0)
            StopAtMissingPair(transfer, number);
        else if (frame.UncertainLoops.Remove(first))
            GoOn(frame, Line + 1);
        else
            GoTo(frame, first, Line, transfer.Token, IsWithoutCondition(frame, first));
    }

    /// <summary>Whether a loop begins with DO alone, or with a condition that holds for ever.</summary>
    static bool IsWithoutCondition(CallFrame frame, int line)
    {
        foreach (ref readonly var token in frame.Text.BlockAt(line).Tokens)
            if (token is { Kind: TokenKind.Statement, Statement: StatementKind.While })
                return !token.ReadsVariables;
        return true;
    }

    void CloseDo(CallFrame frame, in Transfer transfer, int number)
    {
        if (double.IsNaN(transfer.Value))
            LoseWay(frame, transfer.Token);
        else if (transfer.Value == 0)
            GoOn(frame, Line + 1);
        else
            GoTo(frame, frame.Text.DoClosedBy(Line, number), Line, transfer.Token, transfer.IsFixed);
    }

    void OpenRepeat(CallFrame frame, in Transfer transfer, int number)
    {
        var last = frame.Text.PairOf(Line, StatementKind.EndRepeat, number, true);
        if (last < 0)
        {
            StopAtMissingPair(transfer, number);
            return;
        }
        if (double.IsNaN(transfer.Value))
        {
            frame.Counts[Line] = 1;
            EnterUncertain(frame, transfer, last);
            return;
        }
        frame.Counts[Line] = Math.Floor(transfer.Value);
        GoOn(frame, frame.Counts[Line] >= 1 ? Line + 1 : last + 1);
    }

    void CloseRepeat(CallFrame frame, in Transfer transfer, int number)
    {
        var first = frame.Text.PairBefore(Line, StatementKind.Repeat, number, true);
        if (first < 0)
        {
            StopAtMissingPair(transfer, number);
            return;
        }
        var left = frame.Counts.GetValueOrDefault(first) - 1;
        frame.Counts[first] = left;
        _watch.NoteTurn();
        if (left >= 1)
            GoTo(frame, first + 1, Line, transfer.Token, isFixed: false);
        else
            GoOn(frame, Line + 1);
    }

    /// <summary>BREAK goes on behind the end of its loop, CONTINUE at it.</summary>
    void GoToEnd(CallFrame frame, in Transfer transfer, int number, int behind)
    {
        if (frame.Text.EndOfLoopBehind(Line, number).Line is >= 0 and var line)
            GoOn(frame, line + behind);
        else
            StopAtMissingPair(transfer, number);
    }

    void FollowCondition(CallFrame frame, in Transfer transfer, int number)
    {
        switch (transfer.Statement)
        {
            case StatementKind.EndIf:
                GoOn(frame, Line + 1);
                return;
            // Met in the run, these stand behind a branch that was taken.
            case StatementKind.Else or StatementKind.ElseIf when !_at.IsBranch:
                GoBehind(frame, transfer, number, frame.Text.PairOf(Line, StatementKind.EndIf, number, true));
                return;
        }
        var (line, _) = frame.Text.NextBranch(Line, number);
        if (line < 0 && transfer.Statement != StatementKind.Else)
        {
            StopAtMissingPair(transfer, number);
            return;
        }
        if (transfer.Statement != StatementKind.Else && transfer.Value == 0)
        {
            GoOn(frame, line, asBranch: true);
            return;
        }
        if (transfer.Statement != StatementKind.Else && double.IsNaN(transfer.Value))
        {
            // The other branch stands below: it is run later, from the same state.
            Doubt(transfer.Token);
            frame.Wait(new Place(line, true), _state);
        }
        GoOn(frame, Line + 1);
    }
}
