using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.Logging;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Logging;

/// <summary>The document and the place that something was about.</summary>
/// <param name="Uri">The client's name of the document.</param>
/// <param name="Version">Its version; null where it is not open.</param>
/// <param name="At">The place, counted from 0 as the client does; null where none was given.</param>
sealed record FaultPlace(string Uri, int? Version, Position? At = null);

/// <summary>A fault as the log shows it: the client gets the line, the error stream the details too.</summary>
sealed record FaultReport(string Line, string Details);

/// <summary>Logs what went wrong, each fault once, with what is needed to make it happen again. Names of files and what stands in them are told only where the
/// settings ask for it: a log is handed on more readily than a program.</summary>
sealed class FaultLog(ILogger log)
{
    /// <summary>Different faults that are remembered so that none is logged twice; after so many nothing is logged any more.</summary>
    const int MostKnown = 1000;

    const string Place = "place";
    const string Logged = "logged";
    const string Document = "document";

    readonly ConcurrentDictionary<string, byte> _known = new();
    volatile bool _tellsAll;

    /// <summary>Whether names of files and the messages of exceptions, which may quote a program, are told.</summary>
    public bool TellsAll
    {
        set => _tellsAll = value;
    }

    /// <summary>Notes on an exception what it happened at.</summary>
    public static void Put(Exception fault, FaultPlace place)
    {
        if (!fault.Data.Contains(Logged))
            fault.Data[Place] = place;
    }

    /// <summary>Notes on an exception the document that its message names.</summary>
    public static T Naming<T>(T exception, string uri) where T : Exception
    {
        exception.Data[Document] = uri;
        return exception;
    }

    /// <summary>Something failed by a fault of the server's own. What was logged already is not logged again for each of those who wait for it.</summary>
    public void Failed(string what, Exception fault, FaultPlace? place = null)
    {
        if (fault.Data.Contains(Logged))
            return;
        place ??= fault.Data[Place] as FaultPlace;
        fault.Data[Logged] = true;
        if (!IsNew($"{what}\n{fault.GetType()}\n{fault.StackTrace}"))
            return;
        var message = _tellsAll ? $": {fault.Message}" : ".";
        var report = new FaultReport($"{what} failed{(place is null ? "" : Shown(place))} by {fault.GetType().Name}{message}", Details(fault));
        log.Log(LogLevel.Error, default, report, null, (shown, _) => shown.Line);
    }

    /// <summary>A notification was not taken: the client's mistake.</summary>
    public void Refused(string method, Exception reason)
    {
        var message = reason is JsonException unreadable ? Unreadable.Clause(unreadable) + "." : reason.Message;
        if (!_tellsAll && reason.Data[Document] is string { Length: > 0 } uri)
            message = message.Replace(Excerpt.OfName(uri), NameOf(uri), StringComparison.Ordinal);
        Refused(method, message);
    }

    /// <summary>The same of one whose parameters nobody tried to read.</summary>
    public void Refused(string method, string why)
    {
        if (IsNew($"{method}\n{why}"))
            log.NotificationRefused(method, why);
    }

    /// <summary>A notification was taken although something about it is odd: the client's mistake.</summary>
    /// <param name="method">Its method.</param>
    /// <param name="place">The document and where it is odd.</param>
    /// <param name="kind">What is told once for each document.</param>
    /// <param name="what">What is odd, to follow the place.</param>
    public void Odd(string method, FaultPlace place, string kind, string what)
    {
        if (IsNew($"{method}\n{kind}\n{NameOf(place.Uri)}"))
            log.NotificationOdd($"{method}{Shown(place)} {what}");
    }

    /// <summary>Why something did not work, for the log: the message of an exception may quote a path or a program.</summary>
    public string ReasonOf(Exception reason) => _tellsAll ? reason.Message : reason.GetType().Name;

    bool IsNew(string fault) => _known.Count < MostKnown && _known.TryAdd(fault, 0);

    string Shown(FaultPlace place)
    {
        var at = place.At is { } position ? $", line {position.Line} character {position.Character} (from 0)" : "";
        var version = place.Version is { } number ? $", version {number}" : "";
        return $" at {(_tellsAll ? Excerpt.OfName(place.Uri) : "document " + NameOf(place.Uri))}{version}{at},";
    }

    /// <summary>Tells documents apart without naming them.</summary>
    static string NameOf(string uri) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(uri)).AsSpan(0, 4));

    static string Details(Exception fault)
    {
        var text = new StringBuilder();
        for (var part = fault; part is not null; part = part.InnerException)
            text.AppendLine(part.GetType().ToString()).AppendLine(part.StackTrace);
        return text.ToString().TrimEnd();
    }
}
