using System.Text;
using NcLanguage.Machine.Files;

namespace NcLanguage.Machine.Tests.Files;

public sealed class DiskFilesTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("nclanguage").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    string At(string name) => Path.Combine(_folder, name);

    [Fact]
    public void A_file_is_read_whole()
    {
        File.WriteAllText(At("a.json"), "{ \"material\": \"brass\" }");

        var answer = DiskFiles.Instance.Read(At("a.json"));

        Assert.Equal((FileState.Read, "{ \"material\": \"brass\" }"), (answer.State, Encoding.UTF8.GetString(answer.Bytes.Span)));
    }

    [Fact]
    public void A_file_open_for_writing_elsewhere_is_read()
    {
        using var writer = new FileStream(At("a.json"), FileMode.Create, FileAccess.Write, FileShare.ReadWrite);
        writer.Write("{}"u8);
        writer.Flush();

        Assert.Equal(2, DiskFiles.Instance.Read(At("a.json")).Bytes.Length);
    }

    [Fact]
    public void What_is_no_readable_file_says_why()
    {
        File.WriteAllText(At("file"), "");
        using (var large = File.Create(At("large.json")))
            large.SetLength(DiskFiles.GreatestSize + 1);

        Assert.Equal(FileState.Missing, DiskFiles.Instance.Read(At("none.json")).State);
        Assert.Equal(FileState.Missing, DiskFiles.Instance.Read(At("none/none.json")).State);
        Assert.Equal(FileState.Missing, DiskFiles.Instance.Read(At("file/none.json")).State);
        Assert.Equal(FileState.Missing, DiskFiles.Instance.Read(At(new string('x', 300))).State);
        Assert.Equal(FileState.IsFolder, DiskFiles.Instance.Read(_folder).State);
        Assert.Equal(FileState.TooLarge, DiskFiles.Instance.Read(At("large.json")).State);
        Assert.Equal(FileState.Failed, DiskFiles.Instance.Read("a\0b").State);
        Assert.Equal(FileState.Failed, DiskFiles.Instance.Read("").State);
    }

    /// <summary>A pipe that nobody writes into would be waited for without end; a device may give bytes without end.</summary>
    [Fact]
    public void Pipes_and_devices_are_not_read()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using (var mkfifo = System.Diagnostics.Process.Start("mkfifo", [At("pipe")]))
            mkfifo.WaitForExit();
        File.CreateSymbolicLink(At("link.json"), At("pipe"));
        File.WriteAllText(At("sound.json"), "{}");

        Assert.All(["/dev/zero", "/dev/null", At("pipe"), At("link.json")], path =>
        {
            Assert.False(FileKind.IsOrdinary(path));
            Assert.Equal(FileState.IsStream, DiskFiles.Instance.Read(path).State);
        });
        Assert.All([At("sound.json"), _folder, At("none")], path => Assert.True(FileKind.IsOrdinary(path)));
    }

    [Fact]
    public void Links_that_lead_to_no_file_say_so()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(At("loop.json"), At("loop.json"));
        File.CreateSymbolicLink(At("dangling.json"), At("none.json"));
        File.CreateSymbolicLink(At("far.json"), At("dangling.json"));

        Assert.Equal(FileState.LinkRing, DiskFiles.Instance.Read(At("loop.json")).State);
        Assert.Equal(FileState.LinkToNothing, DiskFiles.Instance.Read(At("dangling.json")).State);
        Assert.Equal(FileState.LinkToNothing, DiskFiles.Instance.Read(At("far.json")).State);
    }

    [Fact]
    public void A_job_is_found_on_disk()
    {
        Directory.CreateDirectory(At("jobs"));
        File.WriteAllText(At("jobs/part.setup.json"), "{ \"machine\": \"../mill.machine.json\" }");
        File.WriteAllText(At("mill.machine.json"), "{ \"name\": \"the mill\" }");

        var job = JobFiles.Resolve(At("jobs/part.nc"), _folder, DiskFiles.Instance, JobOptions.None);

        Assert.Empty(job.Problems);
        Assert.Equal("the mill", job.Machine.Name);
        Assert.Equal<string>([At("jobs/part.setup.json"), At("mill.machine.json"), At("jobs/nc.cutting.json"), At("nc.cutting.json")], job.LookedAt);
    }
}
