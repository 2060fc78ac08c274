using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Documents;

/// <summary>Changes that a client should not send and that are made nevertheless, since whoever dropped one would lose the client's text. Each kind is logged
/// once for each document.</summary>
sealed class OddChanges(FaultLog faults)
{
    /// <param name="held">The version that stands before the change.</param>
    /// <param name="change">What came.</param>
    public void Look(int held, DidChangeTextDocumentParams change)
    {
        (var uri, var version) = change.TextDocument;
        if (version is null)
            faults.Odd(Methods.DidChange, new FaultPlace(uri, version), "none", "has no version: it was taken all the same, as of the version before. Others like it of this document are not told.");
        else if (version <= held)
            faults.Odd(Methods.DidChange, new FaultPlace(uri, version), "version", $"came behind version {held}, which is not older: it was taken all the same. Others like it of this document are not told.");
        foreach (var part in change.ContentChanges)
        {
            if (part.Range is not { } range || !IsBehind(range.Start, range.End))
                continue;
            faults.Odd(
                Methods.DidChange, new FaultPlace(uri, version, range.Start), "range",
                $"has a range that ends before it begins, at line {range.End.Line} character {range.End.Character}: it was taken from its end to its start. Others like it of this document are not told.");
        }
    }

    static bool IsBehind(Position place, Position other) => place.Line > other.Line || (place.Line == other.Line && place.Character > other.Character);
}
