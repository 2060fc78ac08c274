using System.Runtime;
using System.Runtime.CompilerServices;
using NcLanguage.Server.Tests.Torture;

namespace NcLanguage.Server.Tests;

[Collection(nameof(Alone))]
public sealed class HousekeeperTests
{
    [Fact]
    public void What_is_old_and_not_used_is_given_back_once()
    {
        using var housekeeper = new Housekeeper(() => false);
        housekeeper.Tidy();
        var old = OldGarbage();
        Assert.True(old.IsAlive);
        Assert.True(housekeeper.Tidy());
        Assert.False(old.IsAlive);
        Assert.False(housekeeper.Tidy());
    }

    [Fact]
    public void What_was_in_use_when_a_breath_was_taken_amid_typing_is_given_back_at_the_rest()
    {
        using var housekeeper = new Housekeeper(() => false);
        housekeeper.Tidy();
        var old = OldAfterABreath(housekeeper);
        Assert.True(old.IsAlive);
        Assert.True(housekeeper.Tidy());
        Assert.False(old.IsAlive);
        Assert.False(housekeeper.Tidy());
    }

    [Fact]
    public void What_the_last_collection_left_to_the_process_is_given_back_at_the_rest()
    {
        using var housekeeper = new Housekeeper(() => false);
        housekeeper.Tidy();
        var inUse = GC.GetTotalMemory(forceFullCollection: false);
        OldGarbage();
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: false);
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: false), 0, inUse + (4 << 20));
        Assert.True(housekeeper.Tidy());
        Assert.False(housekeeper.Tidy());
    }

    [Fact]
    public async Task Nothing_is_tidied_while_an_answer_is_on_its_way_and_all_is_behind_it()
    {
        var isAtWork = true;
        var asked = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var housekeeper = new Housekeeper(() =>
        {
            asked.TrySetResult();
            return Volatile.Read(ref isAtWork);
        });
        housekeeper.Tidy();
        var old = OldGarbage();
        var before = GC.CollectionCount(GC.MaxGeneration);
        housekeeper.PutOff();
        await asked.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal(before, GC.CollectionCount(GC.MaxGeneration));
        Volatile.Write(ref isAtWork, false);
        for (var i = 0; i < 300 && old.IsAlive; i++)
            await Task.Delay(100);
        Assert.False(old.IsAlive);
    }

    [Fact]
    public void What_is_told_of_after_the_end_of_a_session_begins_no_rest()
    {
        var housekeeper = new Housekeeper(() => false);
        housekeeper.Touch();
        housekeeper.Dispose();
        housekeeper.Touch();
        housekeeper.PutOff();
    }

    [Fact]
    public void A_pause_of_the_collector_ends_when_it_is_told_to()
    {
        CollectorPause.Begin(1 << 20);
        CollectorPause.Begin(1 << 20);
        Assert.Equal(GCLatencyMode.NoGCRegion, GCSettings.LatencyMode);
        Assert.True(CollectorPause.End());
        Assert.NotEqual(GCLatencyMode.NoGCRegion, GCSettings.LatencyMode);
        Assert.False(CollectorPause.End());
    }

    [Fact]
    public void One_in_which_more_is_made_than_was_said_ends_by_itself()
    {
        CollectorPause.Begin(1 << 20);
        var made = 0;
        for (; GCSettings.LatencyMode == GCLatencyMode.NoGCRegion && made < 4096; made++)
            GC.KeepAlive(new byte[64 * 1024]);
        Assert.InRange(made, 1, 4095);
        CollectorPause.Begin(1 << 20);
        Assert.Equal(GCLatencyMode.NoGCRegion, GCSettings.LatencyMode);
        Assert.True(CollectorPause.End());
    }

    [Fact]
    public void Tidying_ends_it()
    {
        using var housekeeper = new Housekeeper(() => false);
        housekeeper.Tidy();
        CollectorPause.Begin(1 << 20);
        var old = OldGarbage();
        Assert.True(housekeeper.Tidy());
        Assert.False(old.IsAlive);
        Assert.False(CollectorPause.End());
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    static WeakReference OldGarbage()
    {
        var pages = Pages();
        GC.Collect(GC.MaxGeneration);
        GC.KeepAlive(pages);
        return new WeakReference(pages);
    }

    /// <summary>What is still in use when memory is collected at a breath, and not from then on.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    static WeakReference OldAfterABreath(Housekeeper housekeeper)
    {
        var inUse = Pages();
        var garbage = OldGarbage();
        housekeeper.TakeBreath();
        Assert.False(garbage.IsAlive);
        GC.KeepAlive(inUse);
        return new WeakReference(inUse);
    }

    // What is much hangs on what is in use, and the tests before may have left anything.
    static byte[][] Pages() => [.. Enumerable.Range(0, (int)Math.Max(1024, GC.GetTotalMemory(forceFullCollection: false) / 2 / PageSize)).Select(_ => new byte[PageSize])];

    const int PageSize = 64 * 1024;
}
