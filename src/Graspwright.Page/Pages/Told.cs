using Graspwright.Workshop.Results;

namespace Graspwright.Page.Pages;

/// <summary>An answer, or why there is none; the same object as a verb prints.</summary>
/// <param name="Verb">The verb.</param>
/// <param name="Answer">The answer; <see langword="null"/> = there is none.</param>
/// <param name="Errors">What is wrong.</param>
/// <param name="Result">What the answer was drawn from, for pictures.</param>
public sealed record Told(string Verb, Answer? Answer, IReadOnlyList<InputError> Errors, object? Result = null)
{
    /// <summary>The same text as the verb prints with <c>--json</c>.</summary>
    public string Json() => Answer is { } answer ? JsonAnswer.Write(answer) : JsonAnswer.WriteErrors(Verb, Errors);
}
