using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Holding;

/// <summary>
/// A grip of twelve contacts on a 60 mm cylinder against the HiGHS solver of SciPy 1.10.1, which was given the same
/// balance with each cone as a pyramid of 720 sides (inside the cone, so at most 1e-5 below).
/// </summary>
public sealed class IndependentSolverTests
{
    [Theory]
    [InlineData(0, 0, -5, 0, 0, 0.06, 9.56773672563825)]
    [InlineData(3, -2, -4, 0.01, 0.02, 0.03, 7.444122289946347)]
    [InlineData(0, 4, 0, 0, 0, -0.05, 17.246811487882972)]
    [InlineData(2, 0, 0, 0, 0.04, 0, 16.895811791299717)]
    public void Finds_the_load_factor_of_an_independent_solver(double fx, double fy, double fz, double x, double y, double z, double theirs)
    {
        double factor = new LoadLimit(Grip()).Factor(new(new(fx, fy, fz), new(x, y, z), default));
        Assert.InRange(factor, theirs * (1 - 1e-5), theirs * (1 + 2e-5));
    }

    private static Grasp Grip()
    {
        (double Near, double Far, double Z, double NearForce, double FarForce)[] fingers = [(-20, -110, 0.03, 6, 4), (-25, -115, 0.01, 7, 3), (-30, -105, -0.01, 5, 5), (-15, -120, -0.03, 4, 2)];
        List<HoldContact> contacts = [];
        List<FingerDrive> drives = [];
        for (int f = 0; f < fingers.Length; f++)
        {
            (double near, double far, double z, double nearForce, double farForce) = fingers[f];
            contacts.Add(On(near, z, 0.6, f, 0.05));
            contacts.Add(On(far, z, 0.6, f, 0.08));
            drives.Add(new(f, 0, 0.05 * nearForce + 0.08 * farForce));
        }

        foreach (double degrees in (double[])[90, 165])
        {
            contacts.Add(On(degrees, 0.02, 0.4, -1, 0));
            contacts.Add(On(degrees, -0.02, 0.4, -1, 0));
        }

        return new() { Contacts = contacts, Drives = drives, Centre = default, Axis = new(0, 0, 1) };
    }

    private static HoldContact On(double degrees, double z, double friction, int finger, double arm)
    {
        Vector2D out2 = Vector2D.AtAngle(degrees * Math.PI / 180);
        return new()
        {
            Name = "contact",
            Kind = finger < 0 ? ContactKind.Palm : ContactKind.Finger,
            Finger = finger,
            Place = new(0.03 * out2.X, 0.03 * out2.Y, z),
            Normal = new(-out2.X, -out2.Y, 0),
            Friction = friction,
            Stiffness = 14000,
            Motions = finger < 0 ? [] : [-arm * out2],
        };
    }
}
