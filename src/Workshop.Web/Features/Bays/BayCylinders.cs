using Workshop.Domain.Clearances;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Ignition;

namespace Workshop.Web.Features.Bays;

/// <summary>The step of compression and plugs on the bay screen.</summary>
internal sealed record BayCylinders(BayModel Screen, GetCompression.Answer Compression, GetPlugs.Answer Plugs, InstrumentChoices Instruments);

/// <summary>The form of one cylinder at one stage.</summary>
internal sealed record BayCylinderTest(BayCylinders Step, Stage Stage, CylinderView Cylinder);
