using System.Diagnostics;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Soak;

/// <summary>Simulated typing for as long as wished: is the memory flat, is everything answered, and does the server at the end say what a fresh one says?</summary>
static class SoakRun
{
    const string Uri = "file:///soak/part.nc";
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Long enough for the server to have tidied up.</summary>
    static readonly TimeSpan LongRest = TimeSpan.FromSeconds(8);

    /// <summary>What memory at rest may be at the end above that of a fresh server with the same text: a part of it, or what a small process takes for its code and the threads that edits woke, MB.</summary>
    const double MostMore = 0.1, MostMoreSmall = 24;

    /// <summary>The memory amid typing may go up and down: the median of the last half over that of the first.</summary>
    const double MostGrownAmidTyping = 1.2;

    /// <param name="executable">The built server.</param>
    /// <param name="edits">Edits in all.</param>
    /// <param name="requests">Requests in all, spread among the edits.</param>
    /// <param name="blocks">Blocks of the program.</param>
    /// <param name="seed">Of the random numbers.</param>
    /// <param name="duration">The edits are spread evenly over it; one that comes late, since an answer was waited for, is followed at once by those that are due. Zero: as fast as the answers come.</param>
    /// <returns>0 where memory was flat, no request failed and the answers are a fresh server's, else 1.</returns>
    public static async Task<int> RunAsync(string executable, int edits, int requests, int blocks, int seed, TimeSpan duration)
    {
        var random = new Random(seed);
        var typist = new Typist(SampleProgram.Make(blocks), random);
        using var server = new SoakClient(executable);
        await OpenAsync(server, typist.Text);
        var outcome = new Dictionary<string, int>();
        var pending = new List<Task>();
        var memory = new List<double>();
        var clock = Stopwatch.StartNew();
        var asked = 0;
        Console.WriteLine($"{edits:N0} edits and {requests:N0} requests in a program of {blocks:N0} blocks, seed {seed}{(duration > TimeSpan.Zero ? $", one edit each {duration.TotalMilliseconds / edits:0.#} ms" : "")}");
        for (var edit = 1; edit <= edits; edit++)
        {
            if (duration * ((double)edit / edits) - clock.Elapsed is var early && early > TimeSpan.Zero)
                await Task.Delay(early);
            await server.NotifyAsync("textDocument/didChange", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = Uri, ["version"] = edit + 1 },
                ["contentChanges"] = new JsonArray(typist.Next()),
            });
            for (; asked < (long)requests * edit / edits; asked++)
            {
                var answering = RequestAsync(server, typist, random, outcome);
                pending.Add(answering);
                // Half of them while fingers rest, the other half overtaken by the next keys.
                if (random.Next(2) == 0)
                    await answering.WaitAsync(Patience);
            }
            // Now and then nothing is typed for a moment, and all is answered.
            if (edit % 20 != 0 && edit != edits)
                continue;
            await server.FindingsAsync(Uri, edit + 1, Patience);
            await Task.WhenAll(pending).WaitAsync(Patience);
            pending.Clear();
            if (edit % Math.Max(20, edits / 20 / 20 * 20) == 0)
            {
                memory.Add(server.Memory);
                Console.WriteLine($"{clock.Elapsed.TotalSeconds,8:0} s  {edit,9:N0} edits  {asked,9:N0} requests  {server.Memory,7:0.0} MB");
            }
        }
        var rate = edits / clock.Elapsed.TotalSeconds;
        Console.WriteLine($"{clock.Elapsed.TotalSeconds:0} s, {rate:0} edits a second; answers: {string.Join(", ", outcome.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key} {pair.Value:N0}"))}");
        var grown = Grown(memory);
        await Task.Delay(LongRest);
        var rested = server.Memory;
        var (differences, fresh) = await CompareAsync(executable, server, typist.Text, edits + 1, random);
        var isFlat = !(grown > MostGrownAmidTyping) && rested <= fresh + Math.Max(MostMore * fresh, MostMoreSmall);
        Console.WriteLine($"memory of the last half over that of the first, medians: {grown:0.00}; at rest {rested:0.0} MB, a fresh server's with the same text {fresh:0.0}: {(isFlat ? "flat" : "it has grown")}");
        await server.ExitAsync();
        return isFlat && differences == 0 && !outcome.Keys.Any(key => key.StartsWith("error", StringComparison.Ordinal)) ? 0 : 1;
    }

    static async Task OpenAsync(SoakClient server, string text)
    {
        await server.InitializeAsync();
        await server.NotifyAsync("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri, ["languageId"] = "nc", ["version"] = 1, ["text"] = text },
        });
        await server.FindingsAsync(Uri, 1, Patience);
    }

    static async Task RequestAsync(SoakClient server, Typist typist, Random random, Dictionary<string, int> outcome)
    {
        var (line, character) = typist.Cursor;
        var (method, parameters) = SomeRequest.Of(random.Next(SomeRequest.Kinds), Uri, line, character, typist.LineCount);
        var (id, answering) = server.Begin(method, parameters);
        // An editor takes back what it no longer needs.
        if (random.Next(10) == 0)
            await server.NotifyAsync("$/cancelRequest", new JsonObject { ["id"] = id });
        var answer = await answering;
        var kind = answer["error"] is not { } error ? "results" : (int)error["code"]! switch
        {
            -32800 => "cancelled",
            -32801 => "content modified",
            var code => $"error {code} {method}",
        };
        lock (outcome)
            outcome[kind] = outcome.GetValueOrDefault(kind) + 1;
    }

    static double Grown(List<double> memory)
    {
        static double Median(IEnumerable<double> values) => values.Order().ToList() is { Count: > 0 } sorted ? sorted[sorted.Count / 2] : double.NaN;
        return Median(memory.Skip(memory.Count / 2)) / Median(memory.Take(memory.Count / 2));
    }

    /// <summary>Asks this server and a fresh one the same, and counts the answers that differ; and the fresh one's memory at rest, MB.</summary>
    static async Task<(int Differences, double Memory)> CompareAsync(string executable, SoakClient server, string text, int version, Random random)
    {
        using var fresh = new SoakClient(executable);
        await OpenAsync(fresh, text);
        var lines = text.Split('\n');
        var asked = 0;
        var differences = 0;
        // A large program is answered twice: what compares distant places is told when the fingers have rested.
        await Task.Delay(LongRest);
        var memory = fresh.Memory;
        Compare("findings", await server.FindingsAsync(Uri, version, Patience), await fresh.FindingsAsync(Uri, 1, Patience));
        for (var kind = 0; kind < SomeRequest.Kinds; kind++)
        {
            for (var time = 0; time < 40; time++)
            {
                var line = random.Next(lines.Length);
                var (method, parameters) = SomeRequest.Of(kind, Uri, line, random.Next(lines[line].Length + 1), lines.Length);
                Compare(method, Settled(await server.AskAsync(method, parameters.DeepClone())), Settled(await fresh.AskAsync(method, parameters.DeepClone())));
            }
        }
        Console.WriteLine($"{asked:N0} answers held against a fresh server's: {differences} differ");
        await fresh.ExitAsync();
        return (differences, memory);

        void Compare(string what, JsonNode? mine, JsonNode? theirs)
        {
            asked++;
            if (JsonNode.DeepEquals(mine, theirs))
                return;
            if (differences++ < 5)
                Console.WriteLine($"differs: {what}\n  {Start(mine)}\n  {Start(theirs)}");
        }

        static string Start(JsonNode? node) => node?.ToJsonString() is { } json ? json[..Math.Min(400, json.Length)] : "null";
    }

    /// <summary>An answer without what names the version it was made from.</summary>
    static JsonNode? Settled(JsonNode answer)
    {
        var result = answer["result"]?.DeepClone() ?? answer["error"]?.DeepClone();
        if (result is JsonObject members)
            members.Remove("resultId");
        foreach (var action in result as JsonArray ?? [])
            (action as JsonObject)?["data"]?.AsObject().Remove("version");
        return result;
    }
}
