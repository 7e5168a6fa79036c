namespace Graspwright.Workshop.Measuring;

/// <summary>What is measured on the wearer.</summary>
public enum Measurement
{
    /// <summary>Pull on the strap, bending toward the palm, at a wrist angle.</summary>
    Flexion,

    /// <summary>Pull on the strap, bending toward the back of the hand, at a wrist angle.</summary>
    Extension,

    /// <summary>How long a share of the greatest pull was held.</summary>
    Hold,

    /// <summary>How far the loaded wrist bends: <c>where</c> says which way.</summary>
    Range,

    /// <summary>Time for ten bends there and back through an angle.</summary>
    TenBends,

    /// <summary>Girth round a place of arm or hand, morning or evening.</summary>
    Girth,

    /// <summary>A length: stumps, hand.</summary>
    Length,

    /// <summary>Place of the thumb's pad in a posture, distal from the wrist's axis.</summary>
    ThumbPadX,

    /// <summary>Place of the thumb's pad in a posture, dorsal of the wrist's axis.</summary>
    ThumbPadY,

    /// <summary>Place of the thumb's pad in a posture, toward the thumb side.</summary>
    ThumbPadZ,

    /// <summary>A place straight off the pad, at the end of a straw held on it, distal.</summary>
    ThumbLooksX,

    /// <summary>The same place, dorsal.</summary>
    ThumbLooksY,

    /// <summary>The same place, toward the thumb side.</summary>
    ThumbLooksZ,

    /// <summary>End of a stump, distal from the wrist's axis.</summary>
    StumpX,

    /// <summary>End of a stump, dorsal of the wrist's axis.</summary>
    StumpY,

    /// <summary>Pinch of the thumb against a scale.</summary>
    ThumbPinch,

    /// <summary>Give of the cuff: dial reading at a pull with the fingers blocked.</summary>
    Give,
}

/// <summary>Words of what is measured, as the sheet spells them.</summary>
public static class Measurements
{
    private static readonly Dictionary<string, Measurement> ByWord = new(StringComparer.OrdinalIgnoreCase)
    {
        ["flexion"] = Measurement.Flexion, ["extension"] = Measurement.Extension, ["hold"] = Measurement.Hold, ["range"] = Measurement.Range,
        ["ten bends"] = Measurement.TenBends, ["girth"] = Measurement.Girth, ["length"] = Measurement.Length, ["thumb pad x"] = Measurement.ThumbPadX,
        ["thumb pad y"] = Measurement.ThumbPadY, ["thumb pad z"] = Measurement.ThumbPadZ, ["thumb looks x"] = Measurement.ThumbLooksX,
        ["thumb looks y"] = Measurement.ThumbLooksY, ["thumb looks z"] = Measurement.ThumbLooksZ, ["stump x"] = Measurement.StumpX, ["stump y"] = Measurement.StumpY, ["thumb pinch"] = Measurement.ThumbPinch, ["give"] = Measurement.Give,
    };

    /// <summary>Every word.</summary>
    public static IReadOnlyCollection<string> Words => ByWord.Keys;

    /// <summary>The word of a quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    public static string Word(this Measurement quantity) => ByWord.First(w => w.Value == quantity).Key;

    /// <summary>The quantity of a word; <see langword="null"/> where there is none.</summary>
    /// <param name="word">The word.</param>
    public static Measurement? Find(string word) => ByWord.TryGetValue(word, out Measurement quantity) ? quantity : null;
}

/// <summary>One line of the measuring sheet that was filled in.</summary>
/// <param name="Measurement">What was measured.</param>
/// <param name="Where">Place, posture, direction or share, as written.</param>
/// <param name="When"><c>morning</c>, <c>evening</c>, <c>loading</c>, <c>unloading</c> or nothing.</param>
/// <param name="AngleDegrees">Anatomical wrist angle, flexion positive, or angle swept [deg]; NaN where none belongs.</param>
/// <param name="Try">Number of the try, from 1.</param>
/// <param name="Value">What was read [N, s, rad or m].</param>
/// <param name="Lever">From the wrist's axis to the strap [m]; NaN where none belongs.</param>
/// <param name="Dial">Dial reading [m]; NaN where none belongs.</param>
/// <param name="DialArm">From the wrist's axis to the dial's foot [m]; NaN where none belongs.</param>
/// <param name="Line">Line of the file.</param>
public sealed record Reading(
    Measurement Measurement, string Where, string When, double AngleDegrees, int Try, double Value, double Lever, double Dial, double DialArm, int Line)
{
    /// <summary>Moment about the wrist's axis: pull × lever [N·m].</summary>
    public double Moment => Value * Lever;

    /// <summary>Angle that the dial shows [rad].</summary>
    public double GiveRadians => Math.Atan2(Dial, DialArm);
}
