namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>
/// 500 random fixtures, each with a random program of every kind of motion, under both readings of the return level, of rapids and of hole positions. Outside
/// reference: dense sampling of a distance worked out apart from the code under test (<see cref="SampledDistance"/>), refined until no place between
/// samples can be nearer by more than 0.004 mm (the distance changes by no more than the tip moves).
/// </summary>
public sealed class RandomFixtureTests
{
    const int Fixtures = 500;
    const int Batches = 10;

    public static TheoryData<int> AllBatches => [.. Enumerable.Range(0, Batches)];

    static readonly string[] Readings =
    [
        "returnLevel=afterHole rapidPath=straight", "returnLevel=beforeMove rapidPath=straight holePositions=incremental",
        "returnLevel=afterHole rapidPath=perAxis", "returnLevel=beforeMove rapidPath=perAxis",
    ];

    [Theory]
    [MemberData(nameof(AllBatches))]
    public void Every_move_agrees_with_dense_sampling_and_no_contact_is_missed(int batch)
    {
        var (moves, touching) = (0, 0);
        for (var seed = batch; seed < Fixtures; seed += Batches)
        {
            var random = new Random(seed);
            var fixture = new Fixture(random);
            var motion = new RandomMotion(random).Begin().Add(6);
            motion.Line("M30");
            var run = SampledRun.Compare(motion.Text, fixture, Readings[seed % Readings.Length], $"seed {seed}");
            moves += run.Moves;
            touching += run.Touching;
        }
        // The fixtures are no empty tables: a good part of the moves touches something, and a good part does not.
        Assert.InRange(touching, moves / 10, moves * 9 / 10);
    }
}
