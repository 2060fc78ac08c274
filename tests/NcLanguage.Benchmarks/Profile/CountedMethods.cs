using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;

namespace NcLanguage.Benchmarks.Profile;

/// <summary>A way from one place of a method to another.</summary>
/// <param name="From">Offset in the method's intermediate language, bytes.</param>
/// <param name="To">Where it leads, bytes.</param>
readonly record struct Edge(int From, int To)
{
    /// <summary>What the runtime and the native compiler call an edge whose count is a number of 32 bits.</summary>
    public const int Kind = 385;
}

/// <summary>How often each way through the product's methods was gone, as the runtime wrote it down at the ends of its processes.</summary>
sealed class CountedMethods
{
    /// <summary>Begins the line that the runtime writes of an edge.</summary>
    static readonly string s_edgeCount = $"Schema InstrumentationKind {Edge.Kind} ";

    /// <summary>What is never gone this often gains nothing by a profile.</summary>
    const long Often = 2000;

    const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    readonly ILookup<string, MethodBase> _byName;
    readonly Dictionary<MethodBase, (List<Edge> Edges, List<long> Counts)> _counts = [];

    /// <param name="folder">Where the product's assemblies lie that were run.</param>
    public CountedMethods(string folder)
    {
        // Beside the assemblies that this program itself uses: those may be built otherwise.
        var context = new AssemblyLoadContext("profiled");
        context.Resolving += (_, name) => Load(Path.Combine(folder, name.Name + ".dll"));
        _byName = Directory.GetFiles(folder, "nclanguage*.dll", new EnumerationOptions { MatchCasing = MatchCasing.CaseInsensitive })
            .SelectMany(file => Load(file)!.GetTypes())
            .Where(type => !type.IsGenericType)
            .SelectMany(type => type.GetMembers(Declared).OfType<MethodBase>())
            .Where(method => !method.IsGenericMethod)
            .ToLookup(method => $"{method.DeclaringType!.FullName}.{method.Name}");

        Assembly? Load(string file) => File.Exists(file) ? context.LoadFromAssemblyPath(file) : null;
    }

    /// <summary>Methods that ran often, by their assemblies, with the count of each of their edges.</summary>
    public IEnumerable<IGrouping<string, (MethodBase Method, IEnumerable<(Edge Edge, long Count)> Counts)>> ByAssembly =>
        _counts.Where(pair => pair.Value.Counts.Exists(count => count >= Often))
            .OrderBy(pair => pair.Key.MetadataToken)
            .Select(pair => (pair.Key, pair.Value.Edges.Zip(pair.Value.Counts)))
            .GroupBy(method => method.Key.Module.Assembly.GetName().Name!)
            .OrderBy(group => group.Key, StringComparer.Ordinal);

    /// <summary>Adds what one process wrote. Methods of the platform and generic ones are left out: a profile of those gained nothing.</summary>
    public void Add(string file)
    {
        var (size, name) = (0, "");
        (List<Edge> Edges, List<long> Counts)? into = null;
        var read = 0;
        using var lines = new StreamReader(file);
        while (lines.ReadLine() is { } line)
        {
            if (line.StartsWith("@@@ ", StringComparison.Ordinal))
                (size, into, read) = (int.Parse(After(line, "ilSize 0x"), NumberStyles.HexNumber, CultureInfo.InvariantCulture), null, 0);
            else if (line.StartsWith("MethodName: ", StringComparison.Ordinal))
                name = After(line, "MethodName: ");
            else if (line.StartsWith("Signature: ", StringComparison.Ordinal))
                into = Find(name, size) is { } method ? Counts(method) : null;
            else if (line.StartsWith(s_edgeCount, StringComparison.Ordinal) && into is var (edges, counts))
                Count(edges, counts, read++, new Edge(Number(After(line, "ILOffset ")), Number(After(line, "Other "))), long.Parse(lines.ReadLine()!, CultureInfo.InvariantCulture));
        }
    }

    /// <summary>The method of that name and size; those that share both cannot be told apart and get no profile.</summary>
    MethodBase? Find(string name, int size) =>
        _byName[name].Where(method => method.GetMethodBody()?.GetILAsByteArray()?.Length == size).Take(2).ToList() is [var only] ? only : null;

    (List<Edge> Edges, List<long> Counts) Counts(MethodBase method)
    {
        if (!_counts.TryGetValue(method, out var counts))
            _counts[method] = counts = ([], []);
        return counts;
    }

    static void Count(List<Edge> edges, List<long> counts, int at, Edge edge, long count)
    {
        if (at == edges.Count)
        {
            edges.Add(edge);
            counts.Add(0);
        }
        if (edges[at] != edge)
            throw new InvalidDataException("Two processes counted the same method in different ways.");
        counts[at] += count;
    }

    static string After(string line, string label)
    {
        var rest = line[(line.IndexOf(label, StringComparison.Ordinal) + label.Length)..];
        return rest.IndexOf(' ') is >= 0 and var end ? rest[..end] : rest;
    }

    static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
