namespace Graspwright.Mechanics.Run;

/// <summary>What is wrong with a drive or object before it moves.</summary>
public enum DriveFault
{
    /// <summary>A linkage cannot be assembled at rest; the amount is how far it misses [m].</summary>
    NotAssembled,

    /// <summary>The pull link passes through the fulcrum or the wrist axis at rest.</summary>
    DeadCentreAtRest,

    /// <summary>The object overlaps a finger at rest; the amount is the overlap [m].</summary>
    ObjectOverlaps,

    /// <summary>A link has no length; the amount is its length [m].</summary>
    NoLength,

    /// <summary>A rod is given slack; the amount is the slack [m].</summary>
    RodWithSlack,
}

/// <summary>A drive that cannot be put together, or an object that cannot be put into it.</summary>
/// <param name="fault">What is wrong.</param>
/// <param name="subject">Which part, by name.</param>
/// <param name="amount">By how much [m or rad].</param>
/// <param name="message">In plain words.</param>
public sealed class DriveException(DriveFault fault, string subject, double amount, string message) : Exception(message)
{
    /// <summary>What is wrong.</summary>
    public DriveFault Fault { get; } = fault;

    /// <summary>Which part, by name.</summary>
    public string Subject { get; } = subject;

    /// <summary>By how much [m or rad].</summary>
    public double Amount { get; } = amount;
}
