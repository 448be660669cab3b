using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The blocks of cars side by side, one after the other in aligned memory.</summary>
internal sealed unsafe class BlockSet<T, TSides> : IDisposable
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    /// <summary>Steps after which the accelerations of the last three move to the upper end again.</summary>
    public const int Ring = 32;

    private const int Past = 3;

    private readonly AlignedMemory memory;
    private readonly int axle;
    private readonly int further;

    public BlockSet(BlockPlan plan, int blocks)
    {
        Plan = plan;
        axle = sizeof(AxleBlock<T, TSides>) + (plan.Kinks.Dampers * sizeof(KinkPair<T, Alike<T>>))
            + ((plan.Kinks.Above + plan.Kinks.Below) * sizeof(KinkPair<T, TSides>));
        further = sizeof(FurtherBlock<T>) + (2 * plan.Shaped.Side * sizeof(Kink<T>));
        var pairs = (Ring + Past + 1) * sizeof(PairPast<T>);
        var bodies = (Ring + Past + 1) * sizeof(BodyPast<T>);
        memory = new(
            AlignedMemory.Room(sizeof(AdamsRule<T>)) + AlignedMemory.Room(sizeof(BodyBlock<T>)) + AlignedMemory.Room(sizeof(LinkBlock<T>))
            + (blocks * (AlignedMemory.Room(axle) + AlignedMemory.Room(further) + AlignedMemory.Room(pairs)))
            + AlignedMemory.Room(pairs) + AlignedMemory.Room(bodies) + AlignedMemory.Room(Spare * sizeof(T)));
        Rule = (AdamsRule<T>*)memory.Take(sizeof(AdamsRule<T>));
        Front = Rear = (AxleBlock<T, TSides>*)memory.Take(axle);
        FrontPast = RearPast = (PairPast<T>*)memory.Take(pairs);
        if (blocks == 2)
        {
            Rear = (AxleBlock<T, TSides>*)memory.Take(axle);
            RearPast = (PairPast<T>*)memory.Take(pairs);
        }

        Body = (BodyBlock<T>*)memory.Take(sizeof(BodyBlock<T>));
        BodyPast = (BodyPast<T>*)memory.Take(bodies);
        Room = (T*)memory.Take(Spare * sizeof(T));
        FrontFurther = RearFurther = (FurtherBlock<T>*)memory.Take(further);
        if (blocks == 2)
        {
            RearFurther = (FurtherBlock<T>*)memory.Take(further);
        }

        Link = (LinkBlock<T>*)memory.Take(sizeof(LinkBlock<T>));
        LinkPast = (PairPast<T>*)memory.Take(pairs);
    }

    /// <summary>Numbers of room to arrange things in.</summary>
    public const int Spare = 24;

    public BlockPlan Plan { get; }

    public AdamsRule<T>* Rule { get; }

    public AxleBlock<T, TSides>* Front { get; }

    public AxleBlock<T, TSides>* Rear { get; }

    public BodyBlock<T>* Body { get; }

    public FurtherBlock<T>* FrontFurther { get; }

    public FurtherBlock<T>* RearFurther { get; }

    public LinkBlock<T>* Link { get; }

    public PairPast<T>* FrontPast { get; }

    public PairPast<T>* RearPast { get; }

    public PairPast<T>* LinkPast { get; }

    public BodyPast<T>* BodyPast { get; }

    public T* Room { get; }

    /// <summary>Every number of the front axle's block, or of both axles in one, with its kinks.</summary>
    public Span<T> Axle => new(Front, axle / sizeof(T));

    /// <summary>Every number of its further elements.</summary>
    public Span<T> Further => new(FrontFurther, further / sizeof(T));

    public Span<T> BodyNumbers => new(Body, sizeof(BodyBlock<T>) / sizeof(T));

    public Span<T> LinkNumbers => new(Link, sizeof(LinkBlock<T>) / sizeof(T));

    public void Dispose() => memory.Dispose();
}
