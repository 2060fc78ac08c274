using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>Which messages may come when: nothing before <c>initialize</c>, nothing but <c>exit</c> after <c>shutdown</c>.
/// Asked by the reader for every message as it arrives, so no lock is needed but for the reset.</summary>
sealed class Lifecycle
{
    enum State
    {
        BeforeInitialize,
        Running,
        ShutDown,
    }

    volatile State _state;

    /// <summary>True once the client has asked for a shutdown; an exit after that is in order.</summary>
    public bool IsShutDown => _state == State.ShutDown;

    /// <summary>Notes the message, and says why it must be refused, or null where it may pass. A refused notification is dropped.</summary>
    public JsonRpcError.ErrorDetail? Refuse(string method, bool isRequest)
    {
        if (method == Methods.Exit)
            return null;
        if (method == Methods.Initialize && isRequest && _state == State.BeforeInitialize)
        {
            _state = State.Running;
            return null;
        }
        if (_state == State.BeforeInitialize)
            return Errors.Detail(Errors.ServerNotInitialized, "The first request must be initialize.");
        if (_state == State.ShutDown)
            return Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The server was shut down; only exit may follow.");
        if (method == Methods.Initialize)
            return Errors.Detail(JsonRpcErrorCode.InvalidRequest, "The server is initialized already.");
        if (method == Methods.Shutdown && isRequest)
            _state = State.ShutDown;
        return null;
    }

    /// <summary>The client's initialize could not be read or failed: it may try again.</summary>
    public void InitializeFailed() => _state = State.BeforeInitialize;
}
