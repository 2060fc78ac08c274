using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Documents;

/// <summary>What a request is about: a document, and the place in it where it names one.</summary>
readonly record struct Asked(string Uri, Position? At = null)
{
    public static implicit operator Asked(string uri) => new(uri);
}
