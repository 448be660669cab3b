using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;

namespace Heaveline.Gpu.Kernels;

/// <summary>What a launch reads and writes. Runs stand in the order of their tables, so that neighbouring threads read the same road.</summary>
internal struct DeviceArguments<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Number of runs.</summary>
    public int Runs;

    /// <summary>Steps from one sample to the next.</summary>
    public int PerSample;

    /// <summary>Further elements that any of the cars has, as <see cref="Models.Needs"/>.</summary>
    public int Needs;

    /// <summary>The step.</summary>
    public AdamsRule<T> Rule;

    /// <summary>Places of the front dampers' kinks, where all cars have the same.</summary>
    public DevicePlaces<T> FrontPlaces;

    /// <summary>Places of the rear dampers' kinks, where all cars have the same.</summary>
    public DevicePlaces<T> RearPlaces;

    /// <summary>Numbers of the cars, number j of run i at j·runs + i.</summary>
    public ArrayView<T> Numbers;

    /// <summary>Which table each run reads.</summary>
    public ArrayView<int> TableOf;

    /// <summary>Of each table: the step at which it begins in <see cref="Road"/>, its samples, and the first of its <see cref="Turns"/>.</summary>
    public ArrayView<int> Tables;

    /// <summary>The roads, one after the other.</summary>
    public ArrayView<RoadStep<T>> Road;

    /// <summary>Until which newest sample a turn lasts, and a bit a question: whether pieces lie within its stretch until then.</summary>
    public ArrayView<int> Turns;

    /// <summary>Shares that differ from run to run, share p of run i at p·runs + i.</summary>
    public ArrayView<T> Shares;

    /// <summary>What each signal counts from, signal s of run i at s·runs + i.</summary>
    public ArrayView<T> Bases;

    /// <summary>Of each question its kind and its signal.</summary>
    public ArrayView<int> Asked;

    /// <summary>Of each table and question the samples in which its stretch begins and ends.</summary>
    public ArrayView<int> Places;

    /// <summary>How far past these samples, 0 to 1.</summary>
    public ArrayView<T> Past;

    /// <summary>Two numbers a question, then the largest angle and whether all stayed finite (0), number j of run i at j·runs + i.</summary>
    public ArrayView<T> Answers;
}
