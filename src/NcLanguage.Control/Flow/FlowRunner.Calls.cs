using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

// Calls of programs and subroutines, and returns from them.
public sealed partial class FlowRunner
{
    void Call(CallFrame caller, in Transfer transfer)
    {
        if (double.IsNaN(transfer.Number))
        {
            LoseWay(caller, transfer.Token);
            return;
        }
        var isSubroutine = transfer.Kind == TransferKind.Structure;
        var number = (int)Math.Round(transfer.Number);
        var passes = isSubroutine ? 1 : transfer.Value;
        if (passes == 0)
        {
            GoOn(caller, Line + 1);
            return;
        }
        if (Find(caller.Text, ref number, ref passes, isSubroutine) is not var (text, region))
        {
            Fault(FaultKind.SubprogramMissing, transfer.Token, number);
            LoseState();
            GoOn(caller, Line + 1);
            return;
        }
        if (_frames.Count > DeepestCall)
        {
            Fault(FaultKind.CallTooDeep, transfer.Token, DeepestCall, CallsItself(text, region) ? 1 : 0);
            StopWay(FlowEnd.Stopped);
            return;
        }
        var handsOver = isSubroutine || transfer.Kind == TransferKind.CallWithArguments;
        if (double.IsNaN(passes))
            Doubt(transfer.Token);
        var frame = new CallFrame(text, region, number)
        {
            CallLine = Line,
            CallersDistance = _state.Distance,
            CallersVariables = handsOver ? _state.Variables ?? Variables.None : null,
            Arguments = handsOver ? [.. Step.Arguments] : null,
            IsByLetters = transfer.Kind == TransferKind.CallWithArguments,
            PassesLeft = double.IsNaN(passes) ? 0 : passes - 1,
            PassesAreUnknown = double.IsNaN(passes),
        };
        _frames.Push(frame);
        Begin(frame);
    }

    /// <summary>The line of the program itself whose G65 has given the local variables in force; −1 where none has, or one of another file.</summary>
    int LineOfArguments()
    {
        var call = -1;
        foreach (var frame in _frames)
        {
            if (call >= 0)
                return frame.Text.Name is null ? call : -1;
            if (frame.Arguments is not null)
            {
                if (!frame.IsByLetters)
                    return -1;
                call = frame.CallLine;
            }
        }
        return -1;
    }

    void Begin(CallFrame frame)
    {
        if (frame.Arguments is { } arguments)
            _state.Variables = (_state.Variables ?? Variables.None).ForCall(arguments);
        SetState(_state);
        // The line of a subroutine's SUB is passed over: met in the run it would lead behind the ENDSUB.
        var isSubroutine = frame.Text.BlockAt(frame.Region.First).Tokens is var tokens && IsSub(tokens);
        GoOn(frame, isSubroutine ? frame.Region.First + 1 : frame.Text.BehindOpeningMark(frame.Region.First));
    }

    static bool IsSub(ReadOnlySpan<Token> tokens)
    {
        foreach (ref readonly var token in tokens)
            if (token.Statement == StatementKind.Sub)
                return true;
        return false;
    }

    (FlowText Text, Region Region)? Find(FlowText text, ref int number, ref double passes, bool isSubroutine)
    {
        if (FindHere(text, number, isSubroutine) is { } here)
            return here;
        // P with more than four digits: how many times, then the program's four digits (common practice, from memory).
        if (!isSubroutine && number > 9999 && FindHere(text, number % 10000, false) is { } counted)
        {
            (passes, number) = (number / 10000, number % 10000);
            return counted;
        }
        if (FileOf(number) is not { } file)
            return null;
        return FindHere(file, number, isSubroutine) ?? (isSubroutine ? null : (file, file.FirstProgram()));
    }

    static (FlowText, Region)? FindHere(FlowText text, int number, bool isSubroutine) =>
        (isSubroutine ? text.FindSubroutine(number) : text.FindProgram(number)) is { } region ? (text, region) : null;

    FlowText? FileOf(int number)
    {
        if (!_files.TryGetValue(number, out var file))
        {
            var found = _programs?.Find(number);
            _files.Add(number, file = found is null ? null : FlowText.Of(found.Text, found.Name));
        }
        return file;
    }

    bool CallsItself(FlowText text, Region region)
    {
        foreach (var frame in _frames)
            if (frame.Text == text && frame.Region == region)
                return true;
        return false;
    }

    /// <summary>M99, ENDSUB or RETURN; M99 with P goes on at a block of the caller, in the program itself at one of its own.</summary>
    void Return(CallFrame frame, in Transfer transfer)
    {
        _state.Ended = _isBehindStep = false;
        if (_frames.Count == 1)
            Jump(frame, transfer);
        else if (transfer is { Kind: TransferKind.Return, Value: not 0 })
            ReturnToNumber(frame, transfer);
        else
            LeaveFrame(frame, frame.CallLine + 1);
    }

    /// <summary>M99 with P: back to a block of the caller, whatever passes are still to come.</summary>
    void ReturnToNumber(CallFrame frame, in Transfer transfer)
    {
        _frames.Pop();
        var caller = _frames.Peek();
        _frames.Push(frame);
        var isKnown = !double.IsNaN(transfer.Number);
        var line = isKnown ? caller.Text.FindNumber((int)Math.Round(transfer.Number), caller.Region, frame.CallLine) : -1;
        if (isKnown && line < 0)
        {
            Fault(FaultKind.JumpMissing, transfer.Token, transfer.Number);
            StopWay(FlowEnd.Stopped);
        }
        else if (line > frame.CallLine)
        {
            // The called program may have other ways, which lead elsewhere: the caller waits there for all of them.
            if (frame.PassesAreUnknown)
                LoseState();
            caller.Wait(new Place(caller.Text.NextBlock(line), false), WithCallersLocals(frame));
            StopWay(FlowEnd.Ended);
        }
        else if (isKnown && !frame.HasOtherWays)
        {
            frame.PassesLeft = 0;
            LeaveFrame(frame, line);
        }
        else
        {
            Doubt(transfer.Token);
            caller.LoseWays();
            LoseState();
            LeaveFrame(frame, frame.CallLine + 1);
        }
    }

    ControlState WithCallersLocals(CallFrame frame) => frame.CallersVariables is { } variables
        ? _state with { Variables = (_state.Variables ?? Variables.None).WithLocalsOf(variables) }
        : _state;

    /// <summary>The line of the program itself with the call that a frame belongs to, or that led to the file with it.</summary>
    int LineOfCall(CallFrame frame)
    {
        var line = frame.CallLine;
        foreach (var caller in _frames.SkipWhile(other => other != frame).Skip(1))
        {
            if (caller.Text.Name is null)
                return line;
            line = caller.CallLine;
        }
        return line;
    }

    /// <summary>Goes back to the caller, or round again; but first where else the called program may have gone.</summary>
    void LeaveFrame(CallFrame frame, int line, bool isReturn = true)
    {
        if (isReturn)
            frame.Returned = frame.Returned is { } other ? StateJoin.Join(other, _state) : _state;
        if (frame.FirstWaiting is { } waiting)
        {
            Resume(frame, waiting);
            return;
        }
        SetState(frame.Returned!.Value);
        if (frame.PassesLeft >= 1)
        {
            frame.PassesLeft--;
            frame.Returned = null;
            _watch.NoteTurn();
            _watch.ComesAgain(frame, frame.Region.First, LineOfCall(frame), _state, readsPlace: true);
            Begin(frame);
            return;
        }
        if (frame.PassesAreUnknown)
            LoseState();
        _frames.Pop();
        (_state, _isBehindStep) = (WithCallersLocals(frame), false);
        if (frame.CallersDistance == DistanceMode.Absolute && _state.Distance == DistanceMode.Incremental)
            _state.IncrementalUse = IncrementalUse.LeftByCall;
        var caller = _frames.Peek();
        if (line <= frame.CallLine)
        {
            GoTo(caller, line, frame.CallLine, LastToken(), isFixed: false);
            return;
        }
        GoOn(caller, line);
    }
}
