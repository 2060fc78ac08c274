using System.Runtime.CompilerServices;
using NcLanguage.Server.Tests.Torture;

namespace NcLanguage.Server.Tests;

[Collection(nameof(Alone))]
public sealed class HousekeeperTests
{
    [Fact]
    public void What_is_old_and_not_used_is_given_back_once()
    {
        using var housekeeper = new Housekeeper();
        housekeeper.Tidy();
        var old = OldGarbage();
        Assert.True(old.IsAlive);
        Assert.True(housekeeper.Tidy());
        Assert.False(old.IsAlive);
        Assert.False(housekeeper.Tidy());
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    static WeakReference OldGarbage()
    {
        byte[][] pages = [.. Enumerable.Range(0, 1024).Select(_ => new byte[64 * 1024])];
        GC.Collect(GC.MaxGeneration);
        GC.KeepAlive(pages);
        return new WeakReference(pages);
    }
}
