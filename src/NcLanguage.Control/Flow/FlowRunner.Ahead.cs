using NcLanguage.Control.Execution;

namespace NcLanguage.Control.Flow;

// Where calls and returns lead that are looked at before the run comes to them.
public sealed partial class FlowRunner
{
    /// <summary>The files that were looked for beside the program, by the numbers of their programs; null for those that are not there.</summary>
    public IReadOnlyDictionary<int, FlowText?> Files => _files;

    FlowText? ICallsAhead.FileOf(int number) => FileOf(number);

    (FlowText Text, int Line)? ICallsAhead.BehindReturn(FlowText text, int line, int left)
    {
        if (left + 1 >= _frames.Count)
            return null;
        var passed = 0;
        foreach (var frame in _frames)
        {
            // Other ways through the program, local variables that end with the call, and further passes behind the next: not plain.
            if (frame.HasOtherWays || frame.PassesAreUnknown || frame.CallersVariables is not null || (passed < left && frame.PassesLeft >= 1))
                return null;
            if (passed++ < left)
                continue;
            if (frame.PassesLeft >= 1)
                return (frame.Text, frame.Text.BehindOpeningMark(frame.Region.First));
            return (_frames.ElementAt(passed).Text, frame.CallLine + 1);
        }
        return null;
    }
}
