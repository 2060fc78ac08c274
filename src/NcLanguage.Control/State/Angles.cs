namespace NcLanguage.Control.State;

/// <summary>Directions in degrees, counterclockwise from a plane's first axis.</summary>
static class Angles
{
    /// <summary>Cosine and sine; exact for whole quarter turns, so that a square stays one.</summary>
    public static (double Cos, double Sin) Direction(double degrees)
    {
        switch (Math.IEEERemainder(degrees, 360))
        {
            case 0:
                return (1, 0);
            case 90:
                return (0, 1);
            case -90:
                return (0, -1);
            case 180 or -180:
                return (-1, 0);
            case var rest:
                var (sin, cos) = Math.SinCos(rest * Math.PI / 180);
                return (cos, sin);
        }
    }

    /// <summary>A product in which 0 of something not known is still 0.</summary>
    public static double Share(double share, double value) => share == 0 ? 0 : share * value;
}
