using NcLanguage.Fuzz.Running;
using Xunit.Abstractions;

namespace NcLanguage.Fuzz;

/// <summary>Cases made from chance. NCLANGUAGE_FUZZ_SECONDS says how long each check goes on, NCLANGUAGE_FUZZ_SEED with which case it begins: a number, or any.</summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. AllChecks.All.Select(check => check.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_is_found(string check) => output.WriteLine(AllChecks.Named(check).Run(FuzzTime.OfEach, FuzzTime.FirstSeed));
}
