using Graspwright.Numerics;

namespace Graspwright.Workshop.Form;

/// <summary>The thumb of a form.</summary>
/// <param name="Foot">Middle of its root [m].</param>
/// <param name="Along">Direction of its middle line.</param>
/// <param name="Outer">Direction square to it, away from the web.</param>
/// <param name="End">Where its cover ends along the middle line, from the foot [m]; NaN = it is not covered.</param>
/// <param name="WebPlace">Place of the web along the limb [m].</param>
/// <param name="WebAngle">Angle of the web round the limb [rad].</param>
/// <param name="RootGirth">Girth at the root as the form has it [m].</param>
public sealed record FormThumb(Vector3D Foot, Vector3D Along, Vector3D Outer, double End, double WebPlace, double WebAngle, double RootGirth);
