using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Documents;

/// <summary>What a request is about: a document, and the place in it where it names one.</summary>
/// <param name="Uri">The document.</param>
/// <param name="At">The place.</param>
/// <param name="InView">Whether the answer is about the lines around the place alone: while the run behind an edit is under way, it is given as soon as it hangs on nothing that has not run.</param>
readonly record struct Asked(string Uri, Position? At = null, bool InView = false)
{
    public static implicit operator Asked(string uri) => new(uri);
}
