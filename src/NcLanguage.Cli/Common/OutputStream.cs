using NcLanguage.Cli.Files;

namespace NcLanguage.Cli.Common;

/// <summary>Standard output: what it does not take is told in one line, and what it takes slowly keeps nobody from stopping the command.</summary>
/// <param name="taker">Takes the bytes; null where standard output is closed.</param>
sealed class OutputStream(Stream? taker) : WrittenStream
{
    /// <summary>A pipe takes so many bytes at once or none (PIPE_BUF of Linux, limits.h): a piece that goes on is a reader that reads.</summary>
    const int Piece = 4096;

    /// <exception cref="CannotRunException">The bytes could not be written.</exception>
    /// <exception cref="ReaderGoneException">Nobody reads them any more.</exception>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (taker is null)
            throw new CannotRunException("the output could not be written: standard output is closed");
        for (; buffer.Length > 0; buffer = buffer[Math.Min(Piece, buffer.Length)..])
        {
            Waiting.BeginOutput();
            try
            {
                taker.Write(buffer[..Math.Min(Piece, buffer.Length)]);
            }
            catch (UnauthorizedAccessException)
            {
                throw new CannotRunException("the output could not be written: standard output takes none");
            }
            catch (IOException e) when (e.HResult == DescriptorStream.ReaderIsGone)
            {
                throw new ReaderGoneException();
            }
            catch (IOException e)
            {
                throw new CannotRunException($"the output could not be written: {WriteFailure.Clause(e)}");
            }
            finally
            {
                Waiting.EndOutput();
            }
        }
    }
}

/// <summary>Standard error: the command's work does not hang on whether anybody can be told of it.</summary>
sealed class ErrorStream(Stream taker) : WrittenStream
{
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Waiting.BeginOutput(isError: true);
        try
        {
            taker.Write(buffer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // There is no other place to say so; the exit code tells it.
        }
        finally
        {
            Waiting.EndOutput(isError: true);
        }
    }
}
