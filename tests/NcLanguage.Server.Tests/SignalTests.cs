using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Tests;

public sealed class SignalTests
{
    /// <summary>Analyses of several programs end at the same time; a client that waits for what is new must not be forgotten.</summary>
    [Fact]
    public async Task Whoever_waits_is_told_however_many_raise_it_at_once()
    {
        var signal = new Signal();
        var waits = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
        {
            List<Task> own = [];
            for (var i = 0; i < 100_000; i++)
            {
                own.Add(signal.Next);
                signal.Raise();
            }
            return own;
        })));
        Assert.DoesNotContain(waits.SelectMany(own => own), wait => !wait.IsCompleted);
        Assert.False(signal.Next.IsCompleted);
    }
}
