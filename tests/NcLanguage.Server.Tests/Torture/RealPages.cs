using System.Text;
using NcLanguage.Reports.MotionView;
using NcLanguage.Reports.Sheet;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>Pages as the command hands them to the server, but written nowhere.</summary>
sealed class RealPages : IPages
{
    public string MotionView(PageInput input, string? nonce, CancellationToken cancel) =>
        Encoding.UTF8.GetString(MotionPage.Write(MotionRecording.Create(input.Path, input.Analysis.Text, input.Analysis.Main.Job, cancel), nonce: nonce));

    public string SetupSheet(PageInput input, CancellationToken cancel) => Reports.Sheet.SetupSheet.Html(new SheetInput(input.Path, input.Analysis, input.Problems, DateTimeOffset.UnixEpoch), cancel);

    public string Write(string name, string page) => "/none";
}
