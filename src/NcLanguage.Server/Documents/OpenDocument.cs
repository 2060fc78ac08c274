using System.Collections.Immutable;
using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>A program open in the editor. Each change makes a new snapshot whose analysis starts at once and drops the one before.</summary>
sealed class OpenDocument : IDisposable
{
    readonly Lock _gate = new();
    readonly Func<LoadedJob> _findJob;
    readonly Func<AnalysisOptions> _options;
    readonly IProgramListener _listener;
    readonly Func<Task> _letAnswersPass;
    CancellationTokenSource _superseded = new();
    Task<LoadedJob> _job;
    AnalysedProgram? _latest;
    (SourceText Text, ImmutableArray<Finding> Findings)? _told;
    bool _isNew;
    DocumentSnapshot _current;
    long _startedAt;

    /// <param name="uri">The client's name of the document.</param>
    /// <param name="version">The client's number of the first version.</param>
    /// <param name="text">The first text.</param>
    /// <param name="findJob">Reads the setup and the machine that go with the program; called on a worker.</param>
    /// <param name="options">How programs are analysed.</param>
    /// <param name="listener">Hears what comes of it.</param>
    /// <param name="letAnswersPass">Ends when answers that are owed have gone out, or soon.</param>
    public OpenDocument(
        string uri, int version, SourceText text, Func<LoadedJob> findJob, Func<AnalysisOptions> options, IProgramListener listener, Func<Task> letAnswersPass)
    {
        _findJob = findJob;
        _options = options;
        _listener = listener;
        _letAnswersPass = letAnswersPass;
        _job = Task.Run(findJob);
        _isNew = HasNoBlock(text);
        Start(uri, version, text, null);
    }

    /// <summary>Bytes from which on the message that brought a text weighs as much as all that is made of it.</summary>
    const int LargeText = 4 << 20;

    /// <summary>Bytes that are made of each of a text when all of it is run anew, more than enough.</summary>
    const long MadeForEachByte = 4;

    /// <summary>Lines that somebody who writes a program puts in at once: a head and an end to begin with, a row of holes. More is a program that is there already.</summary>
    const int LongestTemplate = 20;

    /// <summary>Bytes that a text without blocks may have: a head of comments.</summary>
    const int LongestHead = 16 << 10;

    /// <summary>How long a change is old before distant places of a large program are compared behind the next: in a flow of changes each would undo that work of the one before. Fingers are
    /// slower; a key that is held down and what a client plays back are not.</summary>
    static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(40);

    /// <summary>How long that waits otherwise, for what the change brought to go out first.</summary>
    static readonly TimeSpan ShortPause = TimeSpan.FromMilliseconds(10);

    /// <summary>Longer than from key to key of somebody who looks for the letters; who reads a number off the drawing takes longer.</summary>
    static readonly TimeSpan Rest = TimeSpan.FromSeconds(1);

    public DocumentSnapshot Current => Volatile.Read(ref _current);

    /// <summary>What it is run with; null as long as that is not known.</summary>
    public LoadedJob? Job => _job.IsCompletedSuccessfully ? _job.Result : null;

    /// <summary>Applies changes in their order, each to the text the one before left.</summary>
    public void Change(int version, IReadOnlyList<TextDocumentContentChangeEvent> changes, PositionMapper positions)
    {
        var text = Current.Text;
        var applied = new AppliedChange(text, 0, false);
        foreach (var change in changes)
        {
            applied = AppliedChange.Of(applied.Text, change, positions);
            _isNew = _isNew && (applied.Text.LineCount - text.LineCount <= LongestTemplate || HasNoBlock(applied.Text));
            text = applied.Text;
        }
        Supersede(() => Start(Current.Uri, version, text, new Typing(text.LineAt(applied.End), changes.Count == 1 && applied.IsKey, _isNew)));
    }

    /// <summary>Notes that the text was saved; true where it was changed before, so that its findings are told anew.</summary>
    public bool Saved()
    {
        if (Current.Typing is null)
            return false;
        _isNew = HasNoBlock(Current.Text);
        Supersede(() => Start(Current.Uri, Current.Version, Current.Text, null));
        return true;
    }

    /// <summary>Reads the setup and the machine anew and analyses the same text with them.</summary>
    public void Recheck() => Supersede(() =>
    {
        _job = Task.Run(_findJob);
        Start(Current.Uri, Current.Version, Current.Text, Current.Typing);
    });

    /// <summary>Closes it: drops what is still running.</summary>
    public void Dispose()
    {
        _superseded.Cancel();
        _superseded.Dispose();
    }

    /// <summary>Whether there is nothing but marks, comments and numbers of the program and of blocks.</summary>
    static bool HasNoBlock(SourceText text)
    {
        if (text.Length > LongestHead)
            return false;
        for (var line = 0; line < text.LineCount; line++)
            if (text.BlockAt(line).HasWords)
                return false;
        return true;
    }

    // The message and the copies it was read through are garbage that nothing but a full collection finds. It is not waited for a rest here: until then they double the memory in use.
    static void GiveBack() => GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);

    (SourceText Text, ImmutableArray<Finding> Findings)? Told()
    {
        lock (_gate)
            return _told;
    }

    void Supersede(Action start)
    {
        var before = _superseded;
        _superseded = new CancellationTokenSource();
        start();
        before.Cancel();
        before.Dispose();
    }

    /// <summary>Waits whether another key comes; where none does, what the last one brought is told.</summary>
    async Task RestAsync(DocumentSnapshot snapshot, Typing keys, AnalysedProgram program, ImmutableArray<Finding> all)
    {
        await Task.Delay(Rest, snapshot.Superseded).ConfigureAwait(false);
        var rested = snapshot with { Typing = keys with { IsFlowing = false } };
        if (ReferenceEquals(Interlocked.CompareExchange(ref _current, rested, snapshot), snapshot))
            _listener.Rested(rested, program, all, () => ReferenceEquals(Current, rested) && !rested.Superseded.IsCancellationRequested);
    }

    [MemberNotNull(nameof(_current))]
    void Start(string uri, int version, SourceText text, Typing? typing)
    {
        var superseded = _superseded.Token;
        var job = _job;
        var analysis = new TaskCompletionSource<AnalysedProgram>(TaskCreationOptions.RunContinuationsAsynchronously);
        var snapshot = new DocumentSnapshot(uri, version, text, new Look(), analysis.Task, superseded, typing);
        // Before the analysis begins: one that is done before it counts as the newest would not be told.
        Volatile.Write(ref _current!, snapshot);
        var sinceBefore = Stopwatch.GetElapsedTime(_startedAt);
        _startedAt = Stopwatch.GetTimestamp();
        var pause = sinceBefore < Pause ? Pause : ShortPause;
        _ = Task.Run(() => AnalyseAsync(snapshot, job, pause, analysis), CancellationToken.None);
    }

    async Task AnalyseAsync(DocumentSnapshot snapshot, Task<LoadedJob> findingJob, TimeSpan pause, TaskCompletionSource<AnalysedProgram> done)
    {
        try
        {
            var job = await findingJob.WaitAsync(snapshot.Superseded).ConfigureAwait(false);
            AnalysedProgram? before;
            lock (_gate)
                before = _latest;
            if (!ReferenceEquals(before?.Job, job))
                before = null;
            if (before is not null && Told() is var (text, told) && before.Analysis.GlanceAt(snapshot.Text, text, told) is { IsDefault: false } glance)
                Show(before, glance);
            var analysis = before is not null
                ? before.Analysis.WithText(snapshot.Text, onTheWay =>
                {
                    snapshot.Look.Show(new AnalysedProgram(onTheWay.AsFarAsRun(), job));
                    // The run takes all processors: whoever asks right behind the key is answered before it goes on.
                    _letAnswersPass().GetAwaiter().GetResult();
                    Show(new AnalysedProgram(onTheWay, job), onTheWay.FirstLook(before.Analysis));
                    if (snapshot.Text.Length > LargeText)
                        CollectorPause.Begin(MadeForEachByte * snapshot.Text.Length);
                }, snapshot.Superseded)
                : ProgramAnalysis.Create(snapshot.Text, job.Inputs.Setup, job.Inputs.Machine, _options() with { Programs = job.Programs, WithTwoHands = true }, snapshot.Superseded);
            var program = new AnalysedProgram(analysis, job);
            lock (_gate)
            {
                if (!snapshot.Superseded.IsCancellationRequested)
                    _latest = program;
            }
            // Whoever asks behind a key waits for the run, and not for the findings as well.
            done.TrySetResult(program);
            snapshot.Look.End();
            ImmutableArray<Finding> shown = default;
            if (before is not null && analysis.IsLarge)
            {
                shown = analysis.FirstLook(before.Analysis);
                await _letAnswersPass().ConfigureAwait(false);
                Show(program, shown);
            }
            if (!shown.IsDefault)
                await Task.Delay(pause, snapshot.Superseded).ConfigureAwait(false);
            var all = analysis.FindAll(snapshot.Superseded);
            if (shown.IsDefault || !shown.AsSpan().SequenceEqual(all.AsSpan()))
            {
                await _letAnswersPass().ConfigureAwait(false);
                Show(program, all);
            }
            _listener.Analysed(snapshot, program, IsNewest);
            if (snapshot.Typing is { IsFlowing: true } keys)
                await RestAsync(snapshot, keys, program, all).ConfigureAwait(false);
            if (before is null && snapshot.Text.Length > LargeText)
            {
                // What was found is on its way; everything stands still while memory is collected.
                await Task.Delay(Pause, CancellationToken.None).ConfigureAwait(false);
                GiveBack();
            }
        }
        catch (OperationCanceledException)
        {
            done.TrySetCanceled(snapshot.Superseded);
        }
#pragma warning disable CA1031 // Whatever a rule throws, the server and the other documents go on; the requests that wait get the error.
        catch (Exception e)
#pragma warning restore CA1031
        {
            _listener.Failed(snapshot, e, IsNewest);
            done.TrySetException(e);
            _ = done.Task.Exception;
        }
        finally
        {
            snapshot.Look.End();
        }

        bool IsNewest() => ReferenceEquals(Current, snapshot) && !snapshot.Superseded.IsCancellationRequested;
        void Show(AnalysedProgram program, ImmutableArray<Finding> findings)
        {
            lock (_gate)
            {
                if (!snapshot.Superseded.IsCancellationRequested)
                    _told = (snapshot.Text, findings);
            }
            _listener.Found(snapshot, program, findings, IsNewest);
        }
    }
}
