using System.Collections.Concurrent;
using System.Diagnostics;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Scheduling;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>The connection: lets every message take its turn by the method table, maps exceptions to the protocol's errors, and sends.</summary>
sealed class LspRpc : JsonRpc
{
    /// <summary>Requests to refresh one thing that may be unanswered at once.</summary>
    const int MostRefreshes = 8;

    /// <summary>How long what is told unasked lets answers pass: longer than those take that come behind a key, shorter than anybody sees.</summary>
    static readonly TimeSpan LongestPass = TimeSpan.FromMilliseconds(5);

    readonly RequestQueue _queue;
    readonly Lifecycle _lifecycle;
    readonly Backlog _backlog;
    readonly Outbox _outbox;
    readonly Dictionary<string, (int Unanswered, bool Again)> _refreshes = [];
    readonly FaultLog _faults;
    readonly LspMessageHandler _handler;
    readonly ConcurrentDictionary<RequestId, (string Method, long Arrived, bool IsDone)> _unanswered = new();

    public LspRpc(LspMessageHandler handler, RequestQueue queue, Lifecycle lifecycle, Backlog backlog, FaultLog faults)
        : base(handler)
    {
        _handler = handler;
        _queue = queue;
        _lifecycle = lifecycle;
        _backlog = backlog;
        _outbox = new Outbox((method, parameters) => SendAsync(RequestId.NotSpecified, method, parameters));
        _faults = faults;
        TraceSource = new TraceSource(nameof(JsonRpc), SourceLevels.Off);
    }

    /// <summary>Called when the answer to a request is sent or a notification done: the method and the time since it arrived.</summary>
    public event Action<string, TimeSpan>? Handled;

    /// <summary>Called when the client is told something: findings leave when the analysis is done, which may be long after the key that it is owed to was handled.</summary>
    public event Action? Told;

    /// <summary>Whether an answer is made but has not left yet.</summary>
    public bool IsSending => _unanswered.Any(request => request.Value.IsDone);

    /// <summary>Waits until all that was asked is answered, at most as long as given.</summary>
    public async Task FinishAsync(TimeSpan longest)
    {
        var start = Stopwatch.GetTimestamp();
        // What has come may not have been begun; what is answered may not have left.
        await _backlog.SettleAsync(longest).ConfigureAwait(false);
        while (!_unanswered.IsEmpty && Stopwatch.GetElapsedTime(start) < longest)
            await Task.Delay(5).ConfigureAwait(false);
    }

    /// <summary>Ends when no answer is owed that a key waits for, or soon.</summary>
    public Task LetAnswersPassAsync() => _backlog.PassAsync(LongestPass);

    /// <summary>Sends a notification. They leave in the order of the calls; while the client does not read, only the newest findings of a document
    /// wait for it. One that can't be sent any more is dropped.</summary>
    public void Notify(string method, object parameters)
    {
        _outbox.Put(method, parameters);
        Told?.Invoke();
    }

    /// <summary>Sends a notification that has to arrive before an answer; ends when it is on its way.</summary>
    public Task NotifyFirstAsync(string method, object parameters) => _outbox.PutAsync(method, parameters);

    /// <summary>Sends a request whose answer holds nothing of interest; false where the client refused or is gone.</summary>
    public Task<bool> RequestAsync(string method, object? parameters) => SendAsync(CreateNewRequestId(), method, parameters);

    /// <summary>Asks the client to ask again for what it shows. Where it has not answered the last few times, it is asked once more when it has.</summary>
    public void Refresh(string method) => _ = RefreshAsync(method);

    /// <summary>Sends a request and gives its answer; null where the client refused, answered otherwise or is gone.</summary>
    public async Task<T?> AskAsync<T>(string method, object parameters) where T : class
    {
        try
        {
            return await InvokeCoreAsync<T>(CreateNewRequestId(), method, [parameters], CancellationToken.None, isParameterObject: true).ConfigureAwait(false);
        }
        catch (Exception e) when (e is ConnectionLostException or ObjectDisposedException or OperationCanceledException or RemoteRpcException or IOException or System.Text.Json.JsonException)
        {
            return null;
        }
    }

    protected override async ValueTask<JsonRpcMessage> DispatchRequestAsync(JsonRpcRequest request, TargetMethod targetMethod, CancellationToken cancellationToken)
    {
        var method = request.Method!;
        var arrived = Stopwatch.GetTimestamp();
        if (request.IsResponseExpected)
        {
            _unanswered[request.RequestId] = (method, arrived, false);
            _backlog.Works(1);
        }
        var isPatient = request.IsResponseExpected && method is Methods.PullDiagnostics or Methods.WorkspaceDiagnostics;
        if (isPatient)
            _backlog.WorksPatiently(1);
        var schedule = MethodTable.Rows[method];
        try
        {
            var answer = schedule == Schedule.AtOnce
                ? await base.DispatchRequestAsync(request, targetMethod, cancellationToken).ConfigureAwait(false)
                : await _queue.Enqueue(schedule == Schedule.InOrder, () => base.DispatchRequestAsync(request, targetMethod, cancellationToken), cancellationToken).ConfigureAwait(false);
            if (request.IsResponseExpected)
                _unanswered[request.RequestId] = (method, arrived, true);
            return answer;
        }
        finally
        {
            if (isPatient)
                _backlog.WorksPatiently(-1);
            if (request.IsResponseExpected)
                _backlog.Works(-1);
            else
                Handled?.Invoke(method, Stopwatch.GetElapsedTime(arrived));
        }
    }

    protected override void OnResponseSent(JsonRpcMessage response)
    {
        base.OnResponseSent(response);
        if (response is IJsonRpcMessageWithId { RequestId: var id } && _unanswered.TryRemove(id, out var request))
            Handled?.Invoke(request.Method, Stopwatch.GetElapsedTime(request.Arrived));
    }

    protected override JsonRpcError.ErrorDetail CreateErrorDetails(JsonRpcRequest request, Exception exception)
    {
        var method = request.Method ?? "";
        if (method == Methods.Initialize)
            _lifecycle.InitializeFailed();
        // Where nobody is there any more it is the connection that failed, and that is told once.
        if (_handler.Lost.IsCompleted)
            return Errors.ForException(method, exception);
        // Whatever fails behind the work fails in the writing of its answer.
        if (request.IsResponseExpected && _unanswered.TryGetValue(request.RequestId, out var asked) && asked.IsDone)
        {
            _faults.Failed(method, exception);
            return Errors.AnswerNotWritten(method, exception);
        }
        if (Errors.IsInternal(exception))
            _faults.Failed(method, exception);
        else if (!request.IsResponseExpected)
            _faults.Refused(method, exception);
        return Errors.ForException(method, exception);
    }

    async Task RefreshAsync(string method)
    {
        lock (_refreshes)
        {
            var unanswered = _refreshes.GetValueOrDefault(method).Unanswered;
            var isEnough = unanswered >= MostRefreshes;
            _refreshes[method] = (isEnough ? unanswered : unanswered + 1, isEnough);
            if (isEnough)
                return;
        }
        await RequestAsync(method, null).ConfigureAwait(false);
        bool again;
        lock (_refreshes)
        {
            (var unanswered, again) = _refreshes[method];
            _refreshes[method] = (unanswered - 1, false);
        }
        if (again)
            Refresh(method);
    }

    async Task<bool> SendAsync(RequestId id, string method, object? parameters)
    {
        try
        {
            object?[]? arguments = parameters is null ? null : [parameters];
            await InvokeCoreAsync<object?>(id, method, arguments, CancellationToken.None, isParameterObject: true).ConfigureAwait(false);
            return true;
        }
        catch (Exception e) when (e is ConnectionLostException or ObjectDisposedException or OperationCanceledException or RemoteRpcException or IOException)
        {
            return false;
        }
    }
}
