using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Control.Flow;

// Jumps by block number, and ways back.
public sealed partial class FlowRunner
{
    void Jump(CallFrame frame, in Transfer transfer)
    {
        if (transfer.Value == 0)
        {
            GoOn(frame, Line + 1);
            return;
        }
        var target = FindTarget(frame, transfer);
        if (target < 0)
        {
            if (double.IsNaN(transfer.Value) || double.IsNaN(transfer.Number))
            {
                LoseWay(frame, transfer.Token);
                return;
            }
            StopWay(FlowEnd.Stopped);
            return;
        }
        if (!double.IsNaN(transfer.Value))
        {
            GoTo(frame, target, Line, transfer.Token, transfer.IsFixed);
            return;
        }
        if (target <= Line)
        {
            LoseWay(frame, transfer.Token);
            return;
        }
        Doubt(transfer.Token);
        frame.Wait(new Place(frame.Text.NextBlock(target), false), _state);
        GoOn(frame, Line + 1);
    }

    /// <summary>The line to jump to; −1 where it is not known, or there is none, which is reported.</summary>
    int FindTarget(CallFrame frame, in Transfer transfer)
    {
        if (double.IsNaN(transfer.Number))
            return -1;
        var target = FlowText.BlockNumberOf(transfer.Number) is >= 0 and var number ? frame.Text.FindNumber(number, frame.Region, Line) : -1;
        if (target < 0)
            Fault(FaultKind.JumpMissing, transfer.Token, transfer.Number);
        return target;
    }

    /// <summary>Goes on at a line of the same program, above or below.</summary>
    /// <param name="from">The line of this program from which the run goes there.</param>
    void GoTo(CallFrame frame, int line, int from, int token, bool isFixed)
    {
        if (line > from)
        {
            GoOn(frame, line);
            return;
        }
        var met = isFixed && !frame.Text.HasWayOut(line, from) ? Arrival.Endless : _watch.ComesAgain(frame, line, OwnLine, _state, _readsPlace);
        if (met == Arrival.Doubtful)
        {
            frame.LoseWays();
            StopWay(FlowEnd.Ended);
            return;
        }
        if (met == Arrival.Endless)
        {
            Fault(FaultKind.LoopEndless, token, line + 1);
            StopWay(FlowEnd.Endless);
            return;
        }
        GoOn(frame, line);
    }

    /// <summary>Which way the run goes is not known, nor what has happened when it is through: it goes on in the next block with nothing known. It may have been
    /// here any number of times before, so that what it left at other places on its way does not hold either.</summary>
    void LoseWay(CallFrame frame, int token)
    {
        Doubt(token, isLost: true);
        frame.LoseWays();
        LoseState();
        GoOn(frame, Line + 1);
    }

    /// <param name="isLost">Nothing is known behind it; else both ways are run.</param>
    void Doubt(int token, bool isLost = false)
    {
        Fault(FaultKind.WayNotKnown, token, isLost ? 1 : 0);
        _watch.NoteDoubt();
    }

    void LoseState() => SetState(_state.Forgotten());
}
