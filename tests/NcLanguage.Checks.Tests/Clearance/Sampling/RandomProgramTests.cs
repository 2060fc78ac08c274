namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>100 random programs with calls, loops, frames and radius compensation: no contact is missed and none is made up. Outside reference: dense
/// sampling, as in <see cref="RandomFixtureTests"/>, of the moves that a trace of the program gives.</summary>
public sealed class RandomProgramTests
{
    const int Programs = 100;

    [Fact]
    public void No_contact_is_missed_through_calls_loops_frames_and_compensation()
    {
        var (moves, touching) = (0, 0);
        for (var seed = 1000; seed < 1000 + Programs; seed++)
        {
            var random = new Random(seed);
            var fixture = new Fixture(random);
            var program = new RandomProgram(random, fixture.Tools[0].Diameter!.Value / 2);
            var run = SampledRun.Compare(program.Text, fixture, $"rapidPath={(seed % 2 == 0 ? "straight" : "perAxis")}", $"seed {seed}");
            moves += run.Moves;
            touching += run.Touching;
        }
        Assert.InRange(touching, moves / 10, moves * 9 / 10);
    }
}
