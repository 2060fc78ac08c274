using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Execution;

namespace NcLanguage.Server.Tests;

/// <summary>Behind an edit that has all of a large program run again, what is asked about the lines in view is answered before that is done.</summary>
public sealed class InViewTests
{
    const string Uri = "file:///part.nc";

    const int Far = 40_000;

    static readonly string s_program = "G21 G90 G17 G54\nT1 M6\nS1000 M3\nG0 X0 Y0 Z5\n" + string.Concat(Enumerable.Range(0, Far).Select(i => $"G1 X{i % 80} Y{i % 50} F200\n")) + "T2 M6\nG0 X0\nM30\n";

    [Theory]
    [InlineData("textDocument/hover", """ "position":{"line":30,"character":4} """)]
    [InlineData("textDocument/completion", """ "position":{"line":30,"character":3} """)]
    [InlineData("textDocument/signatureHelp", """ "position":{"line":30,"character":3} """)]
    [InlineData("textDocument/inlayHint", """ "range":{"start":{"line":0,"character":0},"end":{"line":60,"character":0}} """)]
    [InlineData("textDocument/semanticTokens/range", """ "range":{"start":{"line":0,"character":0},"end":{"line":60,"character":0}} """)]
    public async Task What_is_asked_about_lines_near_the_edit_does_not_wait_for_the_run(string method, string where)
    {
        using var rule = new HoldingRule();
        await using var client = await TestClient.InitializedAsync(rules: new RuleSet([rule]));
        await client.OpenAsync(Uri, s_program);
        await client.DiagnosticsAsync(Uri, 1);
        var parameters = $$$"""{"textDocument":{"uri":"{{{Uri}}}"},{{{where}}}}""";
        rule.Hold();
        await client.ChangeAsync(Uri, 2, TestClient.Replace(0, 4, 0, 7, "G91"));
        // The run stands still where the rule is asked, far behind.
        var early = await client.RequestAsync(method, parameters).WaitAsync(TimeSpan.FromSeconds(30));
        var far = client.BeginAsync("textDocument/hover", $$$"""{"textDocument":{"uri":"{{{Uri}}}"},"position":{"line":{{{Far}}},"character":4}}""").Answer;
        await rule.Reached.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.False(far.IsCompleted);
        rule.Release();
        Assert.NotNull((await far)["result"]);
        Assert.Equal((await client.RequestAsync(method, parameters))?.ToJsonString(), early?.ToJsonString());
    }

    /// <summary>Does not let the run pass a change to tool 2 as long as it is held.</summary>
    sealed class HoldingRule : Rule, IDisposable
    {
        readonly ManualResetEventSlim _free = new(initialState: true);
        readonly TaskCompletionSource _reached = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task Reached => _reached.Task;

        public override RuleInfo Info { get; } = Torture.FaultTests.Info("holding");

        public override StepEvents Interest => StepEvents.ToolChange;

        public void Hold() => _free.Reset();

        public void Release() => _free.Set();

        public override void CheckStep(in StepContext step)
        {
            if (step.Step.After.Tool != 2 || _free.IsSet)
                return;
            _reached.TrySetResult();
            _free.Wait(TimeSpan.FromSeconds(60));
        }

        public void Dispose() => _free.Dispose();
    }
}
