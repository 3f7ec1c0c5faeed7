using Plenum.Core.Foundation;

namespace Plenum.Core;

/// <summary>A rule of the audit: how it is made for a value of a project, and what it reads of it.</summary>
internal sealed record GroundedRule(AuditGround Ground, Func<AuditData, AuditRule> Make);
