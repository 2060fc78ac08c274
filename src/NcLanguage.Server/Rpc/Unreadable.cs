using System.Text.Json;
using NcLanguage.Server.Logging;

namespace NcLanguage.Server.Rpc;

/// <summary>What is wrong with parameters, in words of our own: the reader of JSON speaks of the server's types and of bytes.</summary>
static class Unreadable
{
    /// <summary>What stands before the names in the reader's message where members are missing; the exception holds them nowhere else.</summary>
    const string BeforeMissing = "missing required properties including: ";

    /// <summary>A clause, with the place as the reader tells it: <c>$</c> for the parameters, then names of members and numbers of rows from 0.</summary>
    public static string Clause(JsonException fault) => "these parameters cannot be read" + (fault.Path is { } path ? ": " + Told(fault, path) : "");

    static string Told(JsonException fault, string path)
    {
        var at = fault.Message.LastIndexOf(BeforeMissing, StringComparison.Ordinal);
        if (at >= 0)
        {
            string[] missing = [.. fault.Message[(at + BeforeMissing.Length)..].TrimEnd('.').Split(", ").Select(name => $"{Excerpt.OfName(path)}.{name.Trim('\'')}")];
            return string.Join(", ", missing) + (missing.Length == 1 ? " is missing" : " are missing");
        }
        return Excerpt.OfName(path) + (fault.InnerException is FormatException ? " is not a whole number of the range that may stand there" : " is not what may stand there");
    }
}
