using System.Text;
using CsCheck;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Tests.Schema;

namespace NcLanguage.Machine.Tests.Loading;

/// <summary>Rubbish and damaged files: an answer whose every problem has a place in the file, and never an exception.</summary>
public class NeverThrowsTests
{
    static readonly byte[] Signs = "{}[]\",:/\\*#\n\r\t 0123456789eE+-.truefalsn'"u8.ToArray();
    static readonly Gen<byte> Sign = Gen.Int[0, Signs.Length - 1].Select(i => Signs[i]);

    [Fact]
    public void Random_bytes() => Gen.Byte.Array[0, 200].Sample(bytes => { Check(bytes); }, iter: 5000, threads: 1);

    [Fact]
    public void Random_signs_of_json() =>
        Sign.Array[0, 60].Sample(bytes => { Check(bytes); }, iter: 20_000, threads: 1);

    [Fact]
    public void Damaged_files()
    {
        var setup = Encoding.UTF8.GetBytes(Samples.Setup);
        var damage = Gen.Select(Gen.Int[0, setup.Length], Gen.Int[0, 12], Gen.OneOf(Sign, Gen.Byte).Array[0, 6]);
        damage.Array[1, 3].Sample(
            cuts =>
            {
                var bytes = setup.ToList();
                foreach (var (at, length, put) in cuts)
                {
                    var start = Math.Min(at, bytes.Count);
                    bytes.RemoveRange(start, Math.Min(length, bytes.Count - start));
                    bytes.InsertRange(start, put);
                }
                Check([.. bytes]);
            },
            iter: 5000, threads: 1);
    }

    [Fact]
    public void A_file_cut_off_anywhere_is_malformed_within_its_text()
    {
        var setup = Encoding.UTF8.GetBytes(Samples.Setup);
        var end = Array.LastIndexOf(setup, (byte)'}');
        for (var length = 0; length <= end; length++)
        {
            var problem = Assert.Single(Check(setup[..length]));
            Assert.Equal("setup-malformed", problem.Name);
        }
    }

    static IReadOnlyList<SetupProblem> Check(byte[] bytes)
    {
        var problems = SetupFile.Read("a.setup.json", bytes).Problems;
        AssertPlaces(bytes, problems);
        AssertPlaces(bytes, MachineFile.Read("a.machine.json", bytes, MachineProfile.FindBuiltIn).Problems);
        return problems;
    }

    static void AssertPlaces(byte[] bytes, IReadOnlyList<SetupProblem> problems)
    {
        var lines = Encoding.UTF8.GetString(bytes).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n', '\r');
        foreach (var problem in problems)
        {
            Assert.InRange(problem.Line, 1, lines.Length);
            Assert.InRange(problem.EndLine, problem.Line, lines.Length);
            Assert.InRange(problem.Column, 1, lines[problem.Line - 1].Length + 2);
            Assert.True(problem.EndLine > problem.Line || problem.EndColumn >= problem.Column);
            Assert.DoesNotContain('\n', problem.Message);
        }
    }
}
