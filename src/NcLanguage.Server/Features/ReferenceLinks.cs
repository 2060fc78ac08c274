using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>The links from findings to the pages of their rules. The pages are written on a worker when the first link is asked for: starting
/// the server and answering never wait for it, and until it is done there are no links.</summary>
/// <param name="write">Writes the pages and gives their folder; null where there are to be no links.</param>
/// <param name="log">Where a failure is told, once.</param>
/// <param name="faults">Says what of it may be told.</param>
sealed class ReferenceLinks(Func<string>? write, ILogger log, FaultLog faults)
{
    readonly ConcurrentDictionary<string, CodeDescription> _links = new();
    int _isBegun;
    volatile string? _folder;
    volatile bool _isSettled = write is null;

    /// <summary>Raised once, on a worker, when it is known whether there are pages. Not raised where that was known from the start.</summary>
    public event Action? Settled;

    /// <summary>Whether it is known if there are pages.</summary>
    public bool IsSettled => _isSettled;

    /// <summary>Whether the pages can be read.</summary>
    public bool HasPages => _folder is not null;

    /// <summary>The link to a rule's page; null as long as there is none.</summary>
    /// <param name="id">The rule's number.</param>
    public CodeDescription? For(string id)
    {
        if (_folder is { } folder)
            return _links.GetOrAdd(id, static (id, folder) => new CodeDescription(DocumentUri.FromPath(Path.Combine(folder, id + ".md"))), folder);
        if (!_isSettled && Interlocked.Exchange(ref _isBegun, 1) == 0)
            _ = Task.Run(Write);
        return null;
    }

    void Write()
    {
        try
        {
            _folder = write!();
        }
#pragma warning disable CA1031 // Whatever goes wrong with the pages, the findings are told without links.
        catch (Exception e)
#pragma warning restore CA1031
        {
            log.ReferenceNotWritten(faults.ReasonOf(e));
        }
        _isSettled = true;
        Settled?.Invoke();
    }
}
