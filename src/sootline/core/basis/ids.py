"""Which thing is meant? Ids as their own types, so that one cannot stand in for another."""

from typing import NewType

ComponentId = NewType("ComponentId", str)
KindId = NewType("KindId", str)
MemberId = NewType("MemberId", str)
SetId = NewType("SetId", str)
CallId = NewType("CallId", str)
MachineId = NewType("MachineId", str)
PlaceId = NewType("PlaceId", str)
BagId = NewType("BagId", str)
GuideId = NewType("GuideId", str)
ContaminantId = NewType("ContaminantId", str)
RuleId = NewType("RuleId", str)
EditionId = NewType("EditionId", str)
MessageId = NewType("MessageId", str)
ItemId = NewType("ItemId", str)
InstallationId = NewType("InstallationId", str)
DeviceId = NewType("DeviceId", str)
