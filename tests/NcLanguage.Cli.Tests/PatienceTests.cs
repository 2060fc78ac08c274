using NcLanguage.Cli.Common;

namespace NcLanguage.Cli.Tests;

/// <summary>How long a command goes on that was asked to end, at clocks of the test's own.</summary>
public sealed class PatienceTests
{
    /// <param name="share">How much of the time its threads work, together.</param>
    /// <param name="shortest">When it is ended at the earliest, milliseconds.</param>
    /// <param name="longest">And at the latest.</param>
    [Theory]
    [InlineData(0, 2_000, 2_500)]
    [InlineData(0.01, 2_000, 2_500)]
    [InlineData(1, 2_000, 2_500)]
    [InlineData(2, 2_000, 2_500)]
    [InlineData(0.5, 4_000, 4_500)]
    [InlineData(0.25, 8_000, 8_500)]
    [InlineData(0.1, 10_000, 10_000)]
    public void A_command_is_ended_when_it_has_worked_or_rested_for_two_seconds(double share, long shortest, long longest) =>
        Assert.InRange(EndOf(now => (long)(now * share), 10), shortest, longest);

    [Theory]
    [InlineData(400, 10_000, 10_400)]
    [InlineData(100, 4_000, 4_500)]
    public void Time_in_which_nobody_could_look_counts_little(long step, long shortest, long longest) =>
        Assert.InRange(EndOf(_ => 0, step), shortest, longest);

    [Fact]
    public void A_machine_that_stood_still_ends_nothing()
    {
        var patience = new Patience(1_000, 0);
        Assert.False(patience.IsOver(1_010, 5, 0));
        Assert.False(patience.IsOver(8_000, 5, 0));
    }

    /// <summary>A reader that takes something each second gets all of it, though it takes a minute.</summary>
    [Fact]
    public void All_counts_from_the_last_piece_that_was_taken()
    {
        var patience = new Patience(0, 0);
        for (var now = 0L; now < 60_000; now += 10)
            Assert.False(patience.IsOver(now, 0, now / 1_000 * 1_000));
        var end = 60_000L;
        while (!patience.IsOver(end, 0, 59_000))
            end += 10;
        Assert.InRange(end, 60_900, 61_500);
    }

    static long EndOf(Func<long, long> worked, long step)
    {
        var patience = new Patience(0, 0);
        var now = 0L;
        while (!patience.IsOver(now, worked(now), 0))
            now += step;
        return now;
    }
}
