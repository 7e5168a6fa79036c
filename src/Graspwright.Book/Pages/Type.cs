namespace Graspwright.Book.Pages;

/// <summary>Heights of the capitals on paper [mm], and the room a line takes.</summary>
internal static class Type
{
    public const double Title = 5.2;
    public const double Heading = 3.4;
    public const double Subheading = 2.6;
    public const double Body = 2.3; // about 9 points
    public const double Small = 1.9;
    public const double Foot = 1.7;

    /// <summary>From the foot of one line to the next, in heights of the capitals.</summary>
    private const double Leading = 1.85;

    /// <summary>Room that lines of text take [mm].</summary>
    public static double Room(int lines, double heightMm) => lines * heightMm * Leading;
}
