using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>The user's input cannot be used; every fault that was found.</summary>
/// <param name="errors">The faults.</param>
internal sealed class BadInputException(params IReadOnlyList<InputError> errors) : Exception(string.Join('\n', errors.Select(e => e.Text)))
{
    /// <summary>The faults.</summary>
    public IReadOnlyList<InputError> Errors { get; } = errors;
}
