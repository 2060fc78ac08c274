namespace NcLanguage.Server.Rpc;

/// <summary>Goes on where the message was read, and not on another thread that may have to be woken for it: all that happens there is that the message joins the queue.</summary>
internal sealed class InPlace : SynchronizationContext
{
    public override void Post(SendOrPostCallback d, object? state) => d(state);

    public override SynchronizationContext CreateCopy() => this;
}
