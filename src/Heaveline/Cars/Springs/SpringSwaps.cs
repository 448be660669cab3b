namespace Heaveline.Cars;

/// <summary>The springs of a car on which it was weighed.</summary>
internal static class SpringSwaps
{
    /// <summary>Whether springs were bought for a car.</summary>
    public static bool HasSwap(this Car car) => car.Front.Spring.Swap is not null || car.Rear.Spring.Swap is not null;

    /// <summary>The car on the springs that stood on the scales.</summary>
    public static Car OnWeighedSprings(this Car car) => car with { Front = Weighed(car.Front), Rear = Weighed(car.Rear) };

    /// <summary>Whether a bought spring's lengths, or its preload, say where it stands.</summary>
    public static bool IsPlaced(this Spring spring) => spring.Swap is { } swap
        && (swap.Preload is not null || (spring.FreeLength is not null && (swap.Before.FreeLength ?? swap.Before.InstalledLength) is not null));

    private static Axle Weighed(Axle axle) => axle.Spring.Swap is { } swap ? axle with { Spring = swap.Before } : axle;
}
