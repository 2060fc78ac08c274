using System.Globalization;
using BenchmarkDotNet.Running;
using NcLanguage.Benchmarks;
using NcLanguage.Benchmarks.Peers;
using NcLanguage.Benchmarks.Profile;
using NcLanguage.Benchmarks.Soak;

// What can be asked for:
//   server EXE [BLOCKS...]   how long an editor waits for our server, over pipes
//   peers EXE [...]   our server beside others, as a table; peers.sh installs them and puts the table into README.md
//   check EXE         how much program text `check` gets through
//   many EXE          `check` of 1,000 programs of 10,000 blocks each: processors, memory, and what reading them alone takes
//   stock             what is left of a plate of 500 × 500 mm after 5,000 moves
//   soak EXE [EDITS REQUESTS BLOCKS SEED [MINUTES]]   simulated typing: memory, answers, and whether the server then says what a fresh one says; as fast as it can, or spread evenly over MINUTES
//   sample BLOCKS FOLDER [KIND]   writes a program and the setup that the others use; KIND drilling, contour, mix (as it is) or calls
//   profile EXE PROGRAMS FILE   has EXE, compiled as it runs, count its ways through its own code on the programs of a folder and on large ones, and writes the profile for the native compiler
//   engine [options]  the engine in process, by BenchmarkDotNet: lex, analyse, edit, clearance, height field, each with the memory it takes
switch (args)
{
    case ["server", var executable, .. var sizes]:
        return ServerLatency.Run(executable, sizes.Length == 0 ? [1_000, 10_000, 100_000] : [.. sizes.Select(int.Parse)]);
    case ["peers", var executable, .. var rest]:
        PeerComparison.Run([executable, .. rest]);
        return 0;
    case ["check", var executable]:
        CheckThroughput.Run(executable);
        return 0;
    case ["many", var executable]:
        return ManyPrograms.Run(executable);
    case ["soak", var executable]:
        return await SoakRun.RunAsync(executable, edits: 100_000, requests: 50_000, blocks: 2000, seed: 1, TimeSpan.Zero);
    case ["soak", var executable, var edits, var requests, var blocks, var seed]:
        return await SoakRun.RunAsync(executable, int.Parse(edits), int.Parse(requests), int.Parse(blocks), int.Parse(seed), TimeSpan.Zero);
    case ["soak", var executable, var edits, var requests, var blocks, var seed, var time]
        when double.TryParse(time, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var minutes) && minutes is > 0 and <= 10_000:
        return await SoakRun.RunAsync(executable, int.Parse(edits), int.Parse(requests), int.Parse(blocks), int.Parse(seed), TimeSpan.FromMinutes(minutes));
    case ["sample", var blocks, var folder]:
        SampleProgram.Write(int.Parse(blocks), folder, "sample");
        return 0;
    case ["sample", var blocks, var folder, var kind] when Enum.TryParse<SampleKind>(kind, ignoreCase: true, out var program):
        SampleProgram.Write(int.Parse(blocks), folder, kind, program);
        return 0;
    case ["profile", var executable, var programs, var file]:
        ProfileRun.Run(Path.GetFullPath(executable), Path.GetFullPath(programs), Path.GetFullPath(file));
        return 0;
    case ["stock"]:
        StockSpeed.Run();
        return 0;
    case ["engine", .. var rest]:
        BenchmarkSwitcher.FromAssembly(typeof(SampleProgram).Assembly).Run(rest.Length == 0 ? ["--filter", "*"] : rest);
        return 0;
    default:
        Console.Error.WriteLine("usage: NcLanguage.Benchmarks server EXE [BLOCKS...] | peers EXE [options] | check EXE | many EXE | soak EXE [EDITS REQUESTS BLOCKS SEED [MINUTES]] | stock | profile EXE PROGRAMS FILE | sample BLOCKS FOLDER [KIND] | engine [BenchmarkDotNet options]");
        return 2;
}
