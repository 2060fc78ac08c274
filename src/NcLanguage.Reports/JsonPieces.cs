using System.Text.Json;

namespace NcLanguage.Reports;

/// <summary>Long JSON leaves while it is written: it is never all in memory.</summary>
static class JsonPieces
{
    /// <summary>Bytes that may wait before they go out.</summary>
    const int MostPending = 1 << 16;

    /// <summary>Lets out what waits where that is much; true where it did.</summary>
    public static bool FlushWhereMuch(this Utf8JsonWriter json)
    {
        if (json.BytesPending <= MostPending)
            return false;
        json.Flush();
        return true;
    }
}
