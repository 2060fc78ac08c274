using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server;

/// <summary>window/showMessage: what the user has to know although nobody asked, each sentence once in a session. May be used by several workers at once.</summary>
sealed class Notices(Action<ShowMessageParams> send)
{
    readonly Lock _gate = new();
    readonly HashSet<string> _told = new(StringComparer.Ordinal);
    List<string>? _waiting = [];

    /// <summary>Shows a sentence unless it was shown before; before <see cref="Begin"/> it waits.</summary>
    public void Tell(string sentence)
    {
        lock (_gate)
        {
            if (!_told.Add(sentence))
                return;
            if (_waiting is { } waiting)
                waiting.Add(sentence);
            else
                Send(sentence);
        }
    }

    /// <summary>The client is ready: shows what has waited.</summary>
    public void Begin()
    {
        lock (_gate)
        {
            foreach (var sentence in _waiting ?? [])
                Send(sentence);
            _waiting = null;
        }
    }

    void Send(string sentence) => send(new ShowMessageParams(MessageType.Warning, ShownText.Of(Excerpt.OfMessage(sentence))));
}
