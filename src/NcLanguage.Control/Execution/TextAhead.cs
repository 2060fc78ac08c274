using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Execution;

/// <summary>The blocks behind the one that runs, for steps that depend on what follows.</summary>
/// <param name="text">The text of the block that runs.</param>
/// <param name="flow">The same text with the places that a run can go to; null where the run keeps to the order of the text.</param>
/// <param name="calls">What is known of files beside the program and of the calls that the block stands within; null where nothing is.</param>
public sealed class TextAhead(SourceText text, FlowText? flow = null, ICallsAhead? calls = null) : IBlocksAhead
{
    /// <summary>The calls that the look ahead has gone into, the innermost last.</summary>
    readonly List<Entered> _entered = [];

    int _at;

    /// <summary>The text that is looked at; another than that of the block that runs behind a call or a return.</summary>
    FlowText? _looked;

    /// <summary>Calls that the look ahead has left of those that the block that runs stands within.</summary>
    int _left;

    /// <summary>The text of the block that runs, with the places that a run can go to.</summary>
    public FlowText? Flow { get; set; } = flow;

    /// <summary>The line (0-based) of the block that runs.</summary>
    public int Line { get; set; }

    /// <summary>The last line that was asked for since this was last set, whether or not the text has it.</summary>
    public int Farthest { get; set; }

    SourceText Text => _looked?.Text ?? text;

    public void Begin()
    {
        (_at, _looked, _left) = (Line, Flow, 0);
        _entered.Clear();
    }

    public bool TryNext(out Block block)
    {
        _at++;
        Farthest = Math.Max(Farthest, _at);
        var isThere = _at < Text.LineCount && (_entered.Count == 0 || _entered[^1].Region.Holds(_at));
        block = isThere ? Text.BlockAmong(_at) : default;
        return isThere;
    }

    public bool TryFollow(in Transfer transfer) => transfer.Kind switch
    {
        TransferKind.CallProgram => TryCall(transfer),
        TransferKind.Return => TryReturn(transfer),
        _ => _looked?.LineBehind(transfer, _at) is { } line && GoOn(_looked, line),
    };

    bool TryCall(in Transfer transfer)
    {
        if (_looked is null || double.IsNaN(transfer.Number) || double.IsNaN(transfer.Value))
            return false;
        if (transfer.Value == 0)
            return true;
        var number = (int)Math.Round(transfer.Number);
        var inText = _looked;
        if (inText.FindProgram(number) is not { } region)
        {
            if (calls?.FileOf(number) is not { } file)
                return false;
            (inText, region) = (file, file.FindProgram(number) ?? file.FirstProgram());
        }
        if (_entered.Count >= FlowRunner.DeepestCall)
            return false;
        _entered.Add(new Entered(_looked, _at, region, transfer.Value - 1));
        return GoOn(inText, inText.BehindOpeningMark(region.First));
    }

    bool TryReturn(in Transfer transfer)
    {
        if (_looked is null || transfer.Value != 0)
            return false;
        if (_entered.Count == 0)
            return calls?.BehindReturn(_looked, _at, _left++) is { } behind && GoOn(behind.Text, behind.Line);
        var call = _entered[^1];
        if (call.PassesLeft >= 1)
        {
            _entered[^1] = call with { PassesLeft = call.PassesLeft - 1 };
            return GoOn(_looked, _looked.BehindOpeningMark(call.Region.First));
        }
        _entered.RemoveAt(_entered.Count - 1);
        return GoOn(call.From, call.Line + 1);
    }

    bool GoOn(FlowText inText, int line)
    {
        (_looked, _at) = (inText, line - 1);
        return true;
    }

    /// <summary>A call that the look ahead has gone into.</summary>
    /// <param name="From">The text of the call.</param>
    /// <param name="Line">Its line (0-based).</param>
    /// <param name="Region">The lines of the program called.</param>
    /// <param name="PassesLeft">Passes still to come behind the one that is looked at.</param>
    readonly record struct Entered(FlowText From, int Line, Region Region, double PassesLeft);
}

/// <summary>What a look ahead asks of the run beside the text: other files, and the calls that the block that runs stands within.</summary>
public interface ICallsAhead
{
    /// <summary>The file with a program that the text itself does not hold; null where there is none.</summary>
    FlowText? FileOf(int number);

    /// <summary>Where the run goes on behind a return; null where that is not plain.</summary>
    /// <param name="text">The text with the return.</param>
    /// <param name="line">The line (0-based) of the return.</param>
    /// <param name="left">How many of the calls that the block that runs stands within have been left before.</param>
    (FlowText Text, int Line)? BehindReturn(FlowText text, int line, int left);
}
