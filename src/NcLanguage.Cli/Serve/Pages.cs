using System.Globalization;
using System.Text;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.MotionView;
using NcLanguage.Reports.Reference;
using NcLanguage.Reports.Sheet;
using NcLanguage.Server;

namespace NcLanguage.Cli.Serve;

/// <summary>The pages that editors ask for.</summary>
sealed class Pages : IPages
{
    public string MotionView(PageInput input, string? nonce, CancellationToken cancel) =>
        Encoding.UTF8.GetString(MotionPage.Write(MotionRecording.Create(input.Path, input.Analysis.Text, input.Analysis.Main.Job, cancel), nonce: nonce));

    public string SetupSheet(PageInput input, CancellationToken cancel) =>
        Reports.Sheet.SetupSheet.Html(new SheetInput(input.Path, input.Analysis, input.Problems, TimeProvider.System.GetLocalNow()), cancel);

    public string Write(string name, string page)
    {
        var folder = Path.Combine(ReferenceCache.CacheFolder(), "nclanguage", "pages", Environment.ProcessId.ToString(CultureInfo.InvariantCulture));
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, name);
        try
        {
            WrittenFile.Put(path, Encoding.UTF8.GetBytes(page));
        }
        catch (CannotRunException e)
        {
            throw new IOException(e.Message, e);
        }
        return path;
    }
}
