using BenchmarkDotNet.Running;
using NcLanguage.Benchmarks;

// What can be asked for:
//   server EXE        spawn, open and keystroke latencies of a built server, over pipes
//   check EXE         how much program text `check` gets through
//   stock             what is left of a plate of 500 × 500 mm after 5,000 moves
//   sample BLOCKS FOLDER   writes the program and the setup that the others use
//   engine [filters]  the engine in process, by BenchmarkDotNet
switch (args)
{
    case ["server", var executable]:
        await ServerLatency.RunAsync(executable);
        return 0;
    case ["check", var executable]:
        CheckThroughput.Run(executable);
        return 0;
    case ["sample", var blocks, var folder]:
        SampleProgram.Write(int.Parse(blocks), folder, "sample");
        return 0;
    case ["stock"]:
        StockSpeed.Run();
        return 0;
    case ["engine", .. var rest]:
        BenchmarkSwitcher.FromTypes([typeof(EngineBenchmarks)]).Run(rest.Length == 0 ? ["--filter", "*"] : rest);
        return 0;
    default:
        Console.Error.WriteLine("usage: NcLanguage.Benchmarks server EXE | check EXE | stock | sample BLOCKS FOLDER | engine [BenchmarkDotNet options]");
        return 2;
}
