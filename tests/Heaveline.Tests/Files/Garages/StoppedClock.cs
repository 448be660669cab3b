namespace Heaveline.Tests.Files.Garages;

/// <summary>A clock that stands until it is moved.</summary>
internal sealed class StoppedClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
