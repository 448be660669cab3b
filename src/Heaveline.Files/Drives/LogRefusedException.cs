using Heaveline.Quantities;

namespace Heaveline.Files.Drives;

/// <summary>The files of a drive hold no log that can be read.</summary>
/// <param name="refusals">Why, a file each.</param>
public sealed class LogRefusedException(IReadOnlyList<LogRefusal> refusals)
    : NoAnswerException(
        string.Join(' ', refusals.Select(r => $"{r.File}: {r.Message}")), string.Join(' ', refusals.Select(r => r.Advice).Distinct()));
