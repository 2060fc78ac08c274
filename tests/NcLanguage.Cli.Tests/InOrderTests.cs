using NcLanguage.Cli.Check;

namespace NcLanguage.Cli.Tests;

/// <summary>Work on all processors whose results come out in order.</summary>
public sealed class InOrderTests
{
    [Fact]
    public void Results_come_in_order_and_one_at_a_time()
    {
        var random = new Random(7);
        var pauses = Enumerable.Range(0, 500).Select(_ => random.Next(3)).ToArray();
        var handed = new List<int>();
        var inside = 0;
        var count = new InOrder<int>(pauses.Length, number => Pause(number, pauses[number]), _ => 1, number =>
        {
            Assert.Equal(1, Interlocked.Increment(ref inside));
            handed.Add(number);
            Interlocked.Decrement(ref inside);
        }).Run(CancellationToken.None);
        Assert.Equal(pauses.Length, count);
        Assert.Equal(Enumerable.Range(0, pauses.Length), handed);
    }

    /// <summary>The first takes until nothing else goes on: what waits for it is bounded, whatever there is to do.</summary>
    [Fact]
    public async Task What_waits_for_a_slow_one_is_bounded()
    {
        if (Environment.ProcessorCount == 1)
            return;
        var (begun, handed) = (0, 0);
        using var isStill = new ManualResetEventSlim();
        var work = new InOrder<int>(
            1000,
            number =>
            {
                Interlocked.Increment(ref begun);
                if (number == 0)
                    isStill.Wait();
                return number;
            },
            _ => 10_000,
            _ => handed++);
        var running = Task.Run(() => work.Run(CancellationToken.None));
        var before = -1;
        while (Volatile.Read(ref begun) is var now && now != before)
        {
            before = now;
            await Task.Delay(300);
        }
        // 50,000 may wait and one more of each processor be under way.
        Assert.InRange(before, 2, 6 + Environment.ProcessorCount);
        isStill.Set();
        Assert.Equal(1000, await running);
        Assert.Equal(1000, handed);
    }

    [Fact]
    public void What_one_throws_is_thrown_once_all_have_stopped()
    {
        var work = new InOrder<int>(10_000, number => number == 100 ? throw new InvalidOperationException("the hundredth") : number, _ => 1, _ => { });
        Assert.Equal("the hundredth", Assert.Throws<InvalidOperationException>(() => work.Run(CancellationToken.None)).Message);
    }

    [Fact]
    public void Where_it_is_cancelled_everything_done_is_handed_over_in_order()
    {
        using var stop = new CancellationTokenSource();
        var (done, handed) = (0, new List<int>());
        var count = new InOrder<int>(
            100_000,
            number =>
            {
                // Each of them: the one that is the 500th may be made to wait before it cancels, while others go on.
                if (Interlocked.Increment(ref done) >= 500)
                    stop.Cancel();
                stop.Token.ThrowIfCancellationRequested();
                return number;
            },
            _ => 1,
            handed.Add).Run(stop.Token);
        Assert.Equal(count, handed.Count);
        Assert.InRange(count, 500 - Environment.ProcessorCount, 500);
        Assert.Equal(handed.Order(), handed);
    }

    [Fact]
    public void Nothing_to_do_is_done() => Assert.Equal(0, new InOrder<int>(0, number => number, _ => 1, _ => { }).Run(CancellationToken.None));

    static int Pause(int number, int milliseconds)
    {
        Thread.Sleep(milliseconds);
        return number;
    }
}
