using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Reads a file as far as its root object, which every kind of file here is.</summary>
static class JsonRoot
{
    /// <summary>The root object, or null and one problem: <paramref name="what"/> names the kind of file ("setup"),
    /// <paramref name="consequence"/> says what becomes of it, as a sentence without its full stop.</summary>
    public static JsonValue? Read(ReadOnlySpan<byte> bytes, string what, string consequence, ProblemList problems)
    {
        var root = JsonTree.Parse(bytes, out var fault);
        if (fault is not null)
        {
            problems.AddMalformed(fault.Range, fault.Message, consequence);
        }
        else if (root!.Kind != JsonKind.Object)
        {
            problems.AddMalformed(root.Range, $"A {what} is an object in braces {{ }}, but this file holds {ValueReader.Describe(root)}", consequence);
            root = null;
        }
        return root;
    }
}
