using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>What the benchmarks of the engine work on: the sample programs under the machine and the setup that go with them.</summary>
static class Bench
{
    public static MachineProfile Machine => MachineProfile.IsoMill with { IsChosen = true };

    public static Setup Setup => SetupFile.Read("bench.setup.json", Encoding.UTF8.GetBytes(SampleProgram.Setup)).Setup;

    public static byte[] Bytes(int blocks, SampleKind kind) => Encoding.UTF8.GetBytes(SampleProgram.Make(blocks, kind));

    public static ProgramAnalysis Analyse(byte[] bytes) => ProgramAnalysis.Create(SourceText.From(bytes), Setup, Machine);
}
