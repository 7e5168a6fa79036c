using Graspwright.Hand;
using Graspwright.Strength.Wear;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Strength;

/// <summary>How the bores of the finger hinges wear, and what the wrist loses by it.</summary>
/// <remarks>
/// A pin sits fast in its ears and turns in the tongue; with bushings it turns in these instead. Pins of the drive are not
/// followed: the file's own worn play stands for them.
/// </remarks>
public static class WearCourse
{
    private const double WearUnit = 1e-15; // 10⁻⁶ mm³/(N·m)

    /// <summary>Material of the bores that a finger's pins rub.</summary>
    /// <param name="finger">The finger.</param>
    public static string BoreMaterial(FingerBuild finger)
    {
        ArgumentNullException.ThrowIfNull(finger);
        return HasBushing(finger) ? finger.Said.BushingMaterial : finger.Said.FingerMaterial;
    }

    /// <summary>Whether a finger has bushings.</summary>
    /// <param name="finger">The finger.</param>
    public static bool HasBushing(FingerBuild finger)
    {
        ArgumentNullException.ThrowIfNull(finger);
        return finger.Said.BushingMaterial != Hinges.NoBushing;
    }

    /// <summary>Growth of the play of each hinge [m/day], by finger and joint.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips.</param>
    public static double[][] PerDay(HandModel hand, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        Materials materials = new(hand);
        return
        [
            .. FingerBuild.All(hand).Select(finger =>
            {
                double[] growth = new double[3];
                double wear = materials.Of(BoreMaterial(finger)).Wear * WearUnit;
                for (int h = 0; h < finger.Joints.Count; h++)
                {
                    double rubbed = loads.Grips.Sum(g => g.PerDay * g.Rubbed.GetValueOrDefault(finger.Position(h)));
                    double width = HasBushing(finger) ? 2 * finger.Chain.Hinges[h].EarThickness : finger.Chain.Hinges[h].Tongue;
                    growth[finger.Joints[h]] = BoreWear.PlayPerGrip(wear, rubbed, width);
                }

                return growth;
            }),
        ];
    }

    /// <summary>The hand with its finger hinges worn over some days.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="perDay">Growth of the play [m/day].</param>
    /// <param name="days">Days of wear, 0 or more.</param>
    public static HandModel After(HandModel hand, double[][] perDay, double days)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(perDay);
        return hand with
        {
            Fingers = [.. hand.Fingers.Select((f, i) => f with { WornPlay = new(f.Play.First + days * perDay[i][0], f.Play.Second + days * perDay[i][1], f.Play.Third + days * perDay[i][2]) })],
        };
    }

    /// <summary>The hand with its finger hinges worn over some days of its own use.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="days">Days of wear, 0 or more.</param>
    /// <exception cref="Mechanics.Run.DriveException">The drive cannot be put together.</exception>
    public static HandModel AfterDays(HandModel hand, double days) => After(hand, PerDay(hand, GripLoads.Of(hand)), days);

    /// <summary>Sideways play at the fingertip of each finger, side to side [m].</summary>
    /// <param name="hand">The hand with the play wanted as worn play.</param>
    public static double[] TipPlay(HandModel hand) =>
    [
        .. FingerBuild.All(hand).Select(finger =>
        {
            int count = finger.Joints.Count;
            double[] play = new double[count], along = new double[count], spacing = new double[count];
            for (int h = 0; h < count; h++)
            {
                play[h] = FingerBuild.At(finger.Finger.WornPlay, finger.Joints[h]);
                along[h] = finger.Chain.Along[h];
                spacing[h] = HasBushing(finger) ? finger.Chain.Hinges[h].Pin.Spacing + finger.Chain.Hinges[h].EarThickness : finger.Chain.Hinges[h].Tongue;
            }

            return BoreWear.TipPlay(play, along, spacing);
        }),
    ];

    /// <summary>Wrist degrees lost to play at a reversal, with the play of the hand's worn pins [deg].</summary>
    /// <param name="hand">The hand with the play wanted as worn play.</param>
    /// <param name="reference">A closing run.</param>
    /// <returns>NaN where the run gives none.</returns>
    public static double DeadTravelOf(HandModel hand, RunReading reference)
    {
        ArgumentNullException.ThrowIfNull(reference);
        RunReading worn = new() { Run = reference.Run, Drive = reference.Drive, Held = reference.Held, Options = reference.Options, Worn = DriveMapping.ToDrive(hand, worn: true) };
        return new DeadTravel(worn: true).Value(worn).Value;
    }
}
